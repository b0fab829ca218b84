const NUMBER = String.raw`[-+±]?\d[\d,.]*`;
/** What a number is counted in; a currency is three capitals. */
const EACH = String.raw`(?:an?|per) (?:working )?(?:day|week|hour|unit|month)`,
  UNIT = String.raw`${EACH}|[A-Z]{3}|h|min|(?:day|week|hour|month|unit)s?`;
const TOGETHER = new RegExp(
  String.raw`(?:± )?(?<![\w.,])${NUMBER}(?: to ${NUMBER})?(?: %(?: CI)?)?(?: (?:${UNIT})(?!\w))?`,
  'g',
);

/** A space at which no line is broken. */
export const NO_BREAK = '\u00a0';

/**
 * Text whose figures hang together: no line ends within `95 % CI`, `3.41 to 3.51`, `3.46 a day`, `± 0.02`
 * or `16,480 EUR`.
 */
export const unbroken = (text: string): string =>
  text.replace(TOGETHER, (figure) => figure.replaceAll(' ', NO_BREAK));

/** The pieces of a text between which a line may end, as they are shown. */
export const piecesOf = (text: string): string[] =>
  unbroken(text)
    .split(/[ \t\n]+/)
    .filter((piece) => piece !== '')
    .map((piece) => piece.replaceAll(NO_BREAK, ' '));

/** Text that is a day or a week and nothing else: its hyphens are no place to end a line. */
export const isTime = (text: string): boolean => /^\d{4}-(?:\d\d-\d\d|W\d\d)$/.test(text);
