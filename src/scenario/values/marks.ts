/**
 * What no text of a scenario may hold: controls of C0 and C1, which move the cursor of a terminal or end a
 * field, line and paragraph separators, a byte order mark, and marks that override, embed or isolate the
 * direction of writing and so turn what stands behind them around (Unicode Standard Annex 9; Unicode
 * Technical Report 36, sec. 2.6; both from memory). Marks that right-to-left names need (U+200E, U+200F,
 * U+061C) stay.
 */
export const UNSAFE_MARKS =
  // eslint-disable-next-line no-control-regex -- controls are what is looked for
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/g;
const BREAKS = /[\t\n]/;

/** The first such mark in a text, `U+202E`; undefined: there is none. A name has no tab or line break. */
export function unsafeMark(text: string, isName: boolean): string | undefined {
  const [found] = text.match(UNSAFE_MARKS) ?? (isName ? text.match(BREAKS) : null) ?? [];
  return found === undefined ? undefined : nameOfMark(found);
}

/** `U+202E` */
export const nameOfMark = (mark: string): string =>
  `U+${(mark.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

/** What a text should be instead. */
export const SAFE_TEXT = 'text without control characters and marks that turn the direction of writing';

/** A text as other systems have it: without a byte order mark in front, lines ended by LF alone. */
export const withPlainLines = (text: string): string => text.replace(/^\ufeff/, '').replaceAll('\r\n', '\n');
