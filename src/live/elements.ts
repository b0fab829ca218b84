type Made<Name extends keyof HTMLElementTagNameMap> = HTMLElementTagNameMap[Name];

/** An element with properties and what is in it; texts are never read as marks. */
export function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Partial<Made<Name>> = {},
  ...inside: readonly (Node | string)[]
): Made<Name> {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...inside);
  return made;
}
