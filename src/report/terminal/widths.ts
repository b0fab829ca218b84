import { piecesOf } from '../unbroken.js';
import { widthOf } from './lines.js';

/** A column as far as its width goes: one aligned right holds numbers, which are never broken. */
interface Sized {
  readonly align?: 'left' | 'right';
}

/** A longer word may be broken where there is little room; a figure never is. */
const LEAST_WORD = 14;
const FIGURE = /^[(+±-]?\d/;

/**
 * Widths of the columns of a table, head first, that add to `room` at most; null where it cannot be. Heads
 * give way first, then the widest texts.
 */
export function fitted(
  [heads = [], ...rows]: readonly (readonly string[])[],
  columns: readonly Sized[],
  room: number,
): number[] | null {
  const sizes = columns.map(({ align }, c) => {
    const cells = rows.map((row) => row[c] ?? ''),
      head = heads[c] ?? '',
      body = Math.max(0, ...cells.map(widthOf)),
      leastHead = Math.max(0, ...piecesOf(head).map(widthOf));
    return {
      most: Math.max(body, widthOf(head)),
      withHead: Math.max(body, leastHead),
      least: Math.max(leastHead, align === 'right' ? body : Math.max(0, ...cells.map(leastOf))),
    };
  });
  const widths = sizes.map(({ most }) => most);
  for (const limit of ['withHead', 'least'] as const) {
    while (widths.reduce((sum, each) => sum + each, 0) > room) {
      const free = sizes.map((size, c) => ((widths[c] ?? 0) > size[limit] ? (widths[c] ?? 0) : 0)),
        widest = free.indexOf(Math.max(...free));
      if ((free[widest] ?? 0) === 0) break;
      widths[widest] = (widths[widest] ?? 0) - 1;
    }
  }
  return widths.reduce((sum, each) => sum + each, 0) > room ? null : widths;
}

/** Its longest piece, further ones indented by two; a word as far as it is not broken. */
function leastOf(cell: string): number {
  const indent = cell.length - cell.trimStart().length;
  return Math.max(
    0,
    ...piecesOf(cell).map((piece, i) => {
      const before = indent + (i === 0 ? 0 : 2),
        width = widthOf(piece);
      return before + (FIGURE.test(piece) ? width : Math.min(width, LEAST_WORD));
    }),
  );
}
