import { marksNamed } from '../../study/shown.js';

/** Most letters that a cell takes in Excel (its specifications and limits). */
const MOST_LETTERS = 32_767;
/** Not allowed in XML 1.0 (sec. 2.2, production 2), besides marks that are named anyway. */
const NO_XML = /[\ufffe\uffff]/g;
/** What Excel reads as a letter by its code (ECMA-376 part 1, ST_Xstring); from memory. */
const CODED = /_(?=x[0-9a-f]{4}_)/gi;
/** What a writer may take for an error of a formula. */
const LIKE_ERROR = /^#[A-Z0-9/_]+[!?]?$/;

/** A text that a workbook can hold and a reader gets back as it was, but for marks that do harm. */
export const cellText = (text: string): string =>
  marksNamed(text)
    .replace(NO_XML, (mark) => `<U+${mark.charCodeAt(0).toString(16).toUpperCase()}>`)
    .slice(0, MOST_LETTERS)
    .replace(CODED, '_x005F_');

/** A name such as `#N/A`, which has to be marked as words. */
export const looksLikeError = (text: string): boolean => LIKE_ERROR.test(text);
