import { textWidth } from './canvas.js';
import { shorten } from './shorten.js';
import { NO_BREAK, unbroken } from './unbroken.js';

/** Whole short brackets such as an interval, which read badly when broken, and words. */
const PIECE = /\([^()]{1,44}\)[^ \n]*|[^ \n]+/g;

/**
 * Breaks text at spaces into lines no wider than `width` CSS pixels; a single longer word loses its middle.
 */
export function wrap(
  text: string,
  width: number,
  size: number,
  weight: 'normal' | '600' = 'normal',
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of unbroken(text).match(PIECE) ?? []) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, weight) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (line !== '') lines.push(line);
  return lines.map((each) => fit(each.replaceAll(NO_BREAK, ' '), width, size, weight));
}

/** Text no wider than `width` CSS pixels, shortened in its middle if need be. */
export function fit(text: string, width: number, size: number, weight: 'normal' | '600' = 'normal'): string {
  return shorten(text, (candidate) => textWidth(candidate, size, weight) <= width);
}
