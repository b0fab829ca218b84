import type { Plugin } from 'chart.js';
import { font, textWidth } from '../canvas.js';
import { axisOf, drawing } from '../drawing.js';
import { INK, LAYOUT, MUTED, SIZE } from '../style.js';
import { fit } from '../text.js';
import { onWhite } from './marks.js';

/** Gaps ahead of a column of text; the first stands beside the last number of the axis. CSS pixels. */
export const COLUMN_GAP = 22,
  FIRST_GAP = 36;

/**
 * On a phone: thickness of a bar, height of a line of a name, what is kept free beside names, and height of a
 * row with so many bars, so many lines of the name above and figures below. CSS pixels.
 */
export const NARROW_BAR = 14,
  NAMES_ROOM = 8;
const NAME_LINE = 17;
export const narrowRow = (bars: number, lines = 1): number =>
  46 + NARROW_BAR * bars + (NAME_LINE + 1) * (lines - 1);

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

/** Names above the bars, figures below: as many columns of them as there is room for, at least one. */
export function namesAbove(
  rows: readonly { readonly item: unknown; readonly isDrawn?: boolean }[],
  names: readonly (readonly string[])[],
  columns: readonly Texts[],
  bars: number,
): Plugin {
  const half = (NARROW_BAR * bars) / 2;
  return drawing('names above', (context, chart) => {
    const axis = axisOf(chart, 'y');
    context.textBaseline = 'middle';
    for (const [row, { item, isDrawn }] of rows.entries()) {
      const y = axis.getPixelForValue(row),
        lines = names[row] ?? [],
        last = item === null && isDrawn !== true ? y + half + 4 : y - half - 10;
      context.font = font(SIZE.text, item === null ? '600' : 'normal');
      lines.forEach((line, i) => {
        onWhite(context, line, 2, last - NAME_LINE * (lines.length - 1 - i));
      });
      if (item === null) continue;
      context.font = font(SIZE.small);
      const figures = figuresOf(columns, row, LAYOUT.width - NAMES_ROOM);
      if (figures !== '') onWhite(context, figures, 2, y + half + 11, MUTED);
    }
  });
}

/** `a day more (95 %): 0.30 (0.24 to 0.36); verdict: stops it`. */
function figuresOf(columns: readonly Texts[], row: number, room: number): string {
  let told = '';
  for (const { head, cells } of columns) {
    const cell = cells[row] ?? '';
    if (cell === '') continue;
    const next = `${head.join(' ')}: ${cell}`,
      longer = told === '' ? next : `${told}; ${next}`;
    if (told !== '' && textWidth(longer, SIZE.small) > room) break;
    told = longer;
  }
  return fit(told, room, SIZE.small);
}
