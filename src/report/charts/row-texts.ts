import type { Plugin } from 'chart.js';
import { font, textWidth } from '../canvas.js';
import { axisOf, drawing } from '../drawing.js';
import { INK, LAYOUT, MUTED, SIZE } from '../style.js';
import { fit } from '../text.js';

/** Gaps ahead of a column of text; the first stands beside the last number of the axis. CSS pixels. */
export const COLUMN_GAP = 22,
  FIRST_GAP = 36;

/** On a phone: height of a row and its bar, with the name above and the first figure below it. CSS pixels. */
export const NARROW_ROW = 62,
  NARROW_BAR = 16;

/** Texts of a column, null beside headings. */
export interface Texts {
  readonly head: readonly string[];
  readonly cells: readonly (string | null)[];
}

/** Writes the text columns at the right of the plot, their heads level with the axis above it. */
export function textColumns(columns: readonly Texts[]): Plugin {
  return drawing('text columns', (context, chart) => {
    const names = axisOf(chart, 'y');
    let x = chart.chartArea.right + FIRST_GAP;
    context.textBaseline = 'middle';
    for (const each of columns) {
      context.fillStyle = MUTED;
      context.font = font(SIZE.small);
      each.head.forEach((line, index) => {
        context.fillText(line, x, chart.chartArea.top - 14 - 15 * (each.head.length - 1 - index));
      });
      context.fillStyle = INK;
      each.cells.forEach((cell, row) => {
        if (cell !== null) context.fillText(cell, x, names.getPixelForValue(row));
      });
      x += columnWidth(each) + COLUMN_GAP;
    }
  });
}

/** CSS pixels. */
export function columnWidth({ head, cells }: Texts): number {
  return Math.ceil(Math.max(...[...head, ...cells].map((text) => textWidth(text ?? '', SIZE.small))));
}

/** Names above the bars, the first of the figures below. */
export function namesAbove(
  rows: readonly { readonly label: string; readonly item: unknown }[],
  [figures]: readonly Texts[],
): Plugin {
  return drawing('names above', (context, chart) => {
    const names = axisOf(chart, 'y'),
      room = LAYOUT.width - 8,
      head = figures?.head.join(' ') ?? '';
    context.textBaseline = 'middle';
    for (const [row, { label, item }] of rows.entries()) {
      const y = names.getPixelForValue(row),
        weight = item === null ? '600' : 'normal',
        cell = figures?.cells[row] ?? null;
      context.fillStyle = INK;
      context.font = font(SIZE.text, weight);
      context.fillText(fit(label, room, SIZE.text, weight), 2, y - 19);
      if (cell === null) continue;
      context.fillStyle = MUTED;
      context.font = font(SIZE.small);
      context.fillText(fit(`${head}: ${cell}`, room, SIZE.small), 2, y + 18);
    }
  });
}
