import { font, newCanvas } from '../../canvas.js';

const SIZE = 24,
  SIDE = 2 * SIZE;
/** Of a private plane, which no font is asked for: what is drawn is the box of a letter without a shape. */
const NO_LETTER = '\u{10fffd}';
/** What the report's own fonts surely have (Latin and its punctuation), and what has no shape of its own. */
const SURE = /^[\u0000-\u024f\u2000-\u206f\s\p{M}\p{Cf}]$/u; // eslint-disable-line no-control-regex
const MOST_SHOWN = 12;

/** The pixels of a letter as pictures have it: by the report's fonts, else by one of the machine. */
function drawn(letter: string): Buffer {
  const context = newCanvas(SIDE, SIDE).getContext('2d');
  context.font = font(SIZE);
  context.fillText(letter, SIZE / 2, 1.5 * SIZE);
  return Buffer.from(context.getImageData(0, 0, SIDE, SIDE).data);
}

/** Whether there is a font that has the letter. */
export const hasShape = (letter: string): boolean => !drawn(letter).equals(drawn(NO_LETTER));

/** Collects the letters of pictures that are boxes there, since no font of the machine has them. */
export class MissingLetters {
  private readonly known = new Map<string, boolean>();

  constructor(private readonly has: (letter: string) => boolean = hasShape) {}

  /** Looks through a text of a picture. */
  look(text: string): void {
    for (const letter of text)
      if (!SURE.test(letter) && !this.known.has(letter)) this.known.set(letter, this.has(letter));
  }

  /** One line for whoever asked for the pictures; undefined: nothing is missing. */
  notice(): string | undefined {
    const missing = [...this.known].flatMap(([letter, has]) => (has ? [] : [letter]));
    if (missing.length === 0) return undefined;
    const sample = missing.slice(0, MOST_SHOWN).join('') + (missing.length > MOST_SHOWN ? '…' : ''),
      isEastAsian = missing.some((each) =>
        /[\p{Script=Han}\p{Script=Hangul}\p{Script=Hira}\p{Script=Kana}]/u.test(each),
      );
    return (
      `notice: this machine has no font for these characters of the pictures: ${sample}; install one, ` +
      `for example ${isEastAsian ? 'Noto Sans CJK' : 'Noto Sans'}; the page and the CSV files have them`
    );
  }
}
