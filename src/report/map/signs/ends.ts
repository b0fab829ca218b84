import { INK, MUTED } from '../../style.js';
import { px, type Shape } from '../shapes.js';
import { text } from './frame.js';

/** What stands at an end of a row: where units begin or leave, or the letter at which the row goes on. */
export type End = 'START' | 'SHIPPED' | { readonly letter: string };

const RADIUS = 8.5;

/** `A`, `B`, .. `Z`, `AA`: of the n-th cut of the way, from 0. */
export const letterOf = (cut: number): string =>
  (cut < 26 ? '' : letterOf(Math.floor(cut / 26) - 1)) + String.fromCharCode(65 + (cut % 26));

/** What a row begins with, ahead of its line, which begins at `x`. */
export const beginOfRow = (end: End, x: number, y: number, size: number): Shape[] =>
  typeof end === 'string' ? [word(end, x - 7, y, size, 'end')] : ringed(end.letter, x - RADIUS - 2, y);

/** What a row ends with, behind the tip of its arrow, which is at `x`. */
export const endOfRow = (end: End, x: number, y: number, size: number): Shape[] =>
  typeof end === 'string'
    ? [word(end, x + 7, y, size, 'start')]
    : [
        ...ringed(end.letter, x + RADIUS + 5, y),
        text(x + 2 * RADIUS + 9, y + 0.34 * size, 'below', { size, colour: MUTED }),
      ];

/** Start or end of all, as a word. */
export const word = (
  words: string,
  x: number,
  y: number,
  size: number,
  anchor: 'start' | 'middle' | 'end',
): Shape => text(x, y + 0.34 * size, words, { size, weight: '600', anchor });

/** A letter in a ring. */
export function ringed(letter: string, x: number, y: number): Shape[] {
  const left = px(x - RADIUS),
    right = px(x + RADIUS),
    size = letter.length > 1 ? 8 : 11;
  return [
    {
      kind: 'path',
      d:
        `M${left} ${px(y)} A${RADIUS} ${RADIUS} 0 0 0 ${right} ${px(y)} ` +
        `A${RADIUS} ${RADIUS} 0 0 0 ${left} ${px(y)} Z`,
      fill: '#ffffff',
      stroke: INK,
      strokeWidth: 1.2,
    },
    text(x, y + 0.36 * size, letter, { size, weight: '600', anchor: 'middle' }),
  ];
}
