import { INK, MUTED } from '../../style.js';
import { type Group, polyline, type Shape } from '../shapes.js';
import { text } from '../signs/frame.js';
import { drawLabel } from '../signs/labels.js';
import { sentBackText } from '../told.js';
import type { Column, Page, Piece } from './rows-down.js';
import type { Mark, Spread } from './run.js';

/** Labels of a piece with what leads to them, and how many are sent back. */
export function texts(
  { world, arcs }: Page,
  column: Column,
  { rows, labelAt }: Piece,
  x: number,
  spreads: ReadonlyMap<number, Spread>,
  marks: ReadonlyMap<number, Mark>,
): { readonly leads: Shape[]; readonly words: Group[] } {
  const leads: Shape[] = [],
    words: Group[] = [];
  for (const { row, label } of rows) {
    if (row.kind === 'head') continue;
    const { from = 0, to = 0 } = spreads.get(row.cell) ?? {},
      { shapes, stubs, frames } = drawLabel(label, x + labelAt, (from + to - label.height) / 2, 'start'),
      line = x + column.wayAt + (world.strip.cells[row.cell]?.track ?? 0) * column.track,
      middle = marks.get(row.cell)?.middle ?? from;
    const own = [...shapes];
    words.push({ kind: 'words', about: '', place: row.cell, shapes: own });
    for (const stub of stubs)
      leads.push(
        ...supply(
          Math.abs(stub - middle) < 9 ? Math.min(line + 13, x + labelAt - 11) : line + 3,
          stub,
          x + labelAt - 3,
        ),
      );
    for (const { kind, top, bottom } of frames)
      leads.push(lead([line + 13, middle], [x + labelAt, (top + bottom) / 2], kind === 'stops' ? 1.5 : 1.1));
    const sent = arcs.filter(({ side, fromCell }) => side < 0 && fromCell === row.cell);
    sent.forEach((arc, i) => {
      const base = middle + 3.5 + 12 * (i - (sent.length - 1) / 2);
      own.push(
        text(x + column.wayAt - column.reach - 4, base, sentBackText(world, arc), {
          size: column.arcSize,
          anchor: 'end',
          colour: MUTED,
        }),
      );
    });
  }
  return { leads, words };
}

/** From what is marked to its frame. */
const lead = (
  from: readonly [number, number],
  to: readonly [number, number],
  strokeWidth: number,
): Shape => ({
  kind: 'path',
  d: polyline([from, to]),
  stroke: INK,
  strokeWidth,
  fill: 'none',
});

/** A supply: a short line from its text, with an arrow at the line that takes it. */
const supply = (at: number, y: number, from: number): Shape[] => [
  {
    kind: 'path',
    d: `${polyline([
      [from, y],
      [at, y],
    ])} ${polyline([
      [at + 5, y - 3],
      [at, y],
      [at + 5, y + 3],
    ])}`,
    stroke: INK,
    strokeWidth: 1,
    fill: 'none',
  },
];
