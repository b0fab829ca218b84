import { nameOfMark, UNSAFE_MARKS } from '../scenario/values/marks.js';

/** A run of text written from the right: from its first letter to its last one or mark. */
const RIGHT = '\\p{Script=Hebrew}\\p{Script=Arabic}\\p{Script=Syriac}\\p{Script=Thaana}\\p{Script=Nko}',
  RIGHT_TO_LEFT = new RegExp(`[${RIGHT}\\u200f\\u061c](?:[^\\n<>&"]*[${RIGHT}\\u200e\\u200f\\u061c])?`, 'gu');
const ISOLATE = '\u2068',
  END = '\u2069';

/**
 * Text that can stand in any output, whatever a name, a path or a message brought with it: what a terminal
 * or a browser would act on is written as its code point, `<U+001B>`, and text from the right is isolated, so
 * that it turns nothing around that stands beside it (Unicode Standard Annex 9, from memory).
 */
export function shown(text: string): string {
  return marksNamed(text).replace(RIGHT_TO_LEFT, (run) => `${ISOLATE}${run}${END}`);
}

/** The same of a text that stands by itself, as in a cell: such marks alone are written as code points. */
export const marksNamed = (text: string): string =>
  text.replace(UNSAFE_MARKS, (mark) => `<${nameOfMark(mark)}>`);

/** The same JSON, in which such marks, which can stand in its texts alone, are escapes: nothing is lost. */
export const shownJson = (json: string): string =>
  json.replace(UNSAFE_MARKS, (mark) => `\\u${nameOfMark(mark).slice(2)}`);
