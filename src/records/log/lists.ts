/**
 * Lists in a cell: parts stand apart by `;`, a key and its value by the first `=`. Where these characters or
 * `%` belong to the text they are percent-encoded (RFC 3986, section 2.1), so that nothing is lost.
 */
export const NO_OTHERS: readonly string[] = Object.freeze([]);
export const NO_VALUES: Readonly<Record<string, string>> = Object.freeze({});

const encoded = (text: string): string =>
  text.replaceAll('%', '%25').replaceAll(';', '%3B').replaceAll('=', '%3D');

/** Only these three are decoded: a `%` ahead of anything else is a per cent sign that somebody wrote. */
const decoded = (text: string): string =>
  text.includes('%')
    ? text.replaceAll(/%(25|3[BbDd])/g, (_, code: string) =>
        code === '25' ? '%' : /b/i.test(code) ? ';' : '=',
      )
    : text;

export const listText = (parts: readonly string[]): string => parts.map(encoded).join(';');

export function listIn(text: string): readonly string[] {
  return text === '' ? NO_OTHERS : text.split(';').map((part) => decoded(part.trim()));
}

export const valuesText = (values: Readonly<Record<string, string>>): string =>
  Object.entries(values)
    .map(([key, value]) => `${encoded(key)}=${encoded(value)}`)
    .join(';');

/** A part without `=` is a key whose value is empty. */
export function valuesIn(text: string): Readonly<Record<string, string>> {
  if (text === '') return NO_VALUES;
  return Object.fromEntries(
    text.split(';').map((part) => {
      const equals = part.indexOf('=');
      return equals < 0
        ? [decoded(part.trim()), '']
        : [decoded(part.slice(0, equals).trim()), decoded(part.slice(equals + 1).trim())];
    }),
  );
}
