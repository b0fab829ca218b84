/** How an event names another object: `type:object`; a colon or `%` in the type is percent-encoded. */
export const referenceTo = (type: string, object: string): string =>
  `${type.replaceAll('%', '%25').replaceAll(':', '%3A')}:${object}`;

/** Type and object of a reference; one without a colon has no type. */
export function referredBy(reference: string): { readonly type: string; readonly object: string } {
  const colon = reference.indexOf(':');
  if (colon < 0) return { type: '', object: reference };
  const type = reference
    .slice(0, colon)
    .replaceAll(/%(25|3[Aa])/g, (_, code: string) => (code === '25' ? '%' : ':'));
  return { type, object: reference.slice(colon + 1) };
}
