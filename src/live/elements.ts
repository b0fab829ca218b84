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

/** Finds a part by its class in something of the page, which has one of each. */
export const partsOf =
  (whole: HTMLElement, what: string) =>
  (name: string): HTMLElement => {
    const found = whole.querySelector<HTMLElement>(`.${name}`);
    if (found === null) throw new Error(`page: expected a part ${name} in each ${what}, got none`);
    return found;
  };
