import type { ChartOptions, Plugin } from 'chart.js';
import { font, textWidth } from '../canvas.js';
import { INK, MUTED, SIZE } from '../style.js';
import { fit } from '../text.js';
import { drawing } from './marks.js';

/** A row of a chart with horizontal bars: a thing with its name, or the heading of a site (`item` null). */
export interface Row<Item> {
  readonly label: string;
  readonly item: Item | null;
}
/** Text at the right of the bars, one cell a row (empty for headings); the head has at most two lines. */
export interface TextColumn {
  readonly head: readonly string[];
  readonly cells: readonly string[];
}

const NAME_ROOM = 330,
  COLUMN_GAP = 22;

/** A name as it stands beside its bars: shortened if it is very long. */
export function rowLabel(name: string, weight: 'normal' | '600' = 'normal'): string {
  return fit(name, NAME_ROOM, SIZE.text, weight);
}

/** Rows under a heading for each site, sites and rows in the order in which they come. */
export function rowsBySite<Item extends { readonly name: string; readonly site: string }>(
  items: readonly Item[],
): Row<Item>[] {
  const sites = [...new Set(items.map((item) => item.site))];
  return sites.flatMap((site) => [
    { label: rowLabel(site, '600'), item: null },
    ...items.filter((item) => item.site === site).map((item) => ({ label: rowLabel(item.name), item })),
  ]);
}

/** One value a row, null at headings. */
export function perRow<Item, Value>(
  rows: readonly Row<Item>[],
  value: (item: Item) => Value,
): (Value | null)[] {
  return rows.map((row) => (row.item === null ? null : value(row.item)));
}

/** One text a row, empty at headings. */
export function column<Item>(
  head: readonly string[],
  rows: readonly Row<Item>[],
  cell: (item: Item) => string,
): TextColumn {
  return { head, cells: rows.map((row) => (row.item === null ? '' : cell(row.item))) };
}

/** Height of one row, CSS pixels: closer when there are many. */
export function rowHeight(rows: number): number {
  return rows > 30 ? 21 : 26;
}

/** The axis of names at the left, as wide as the names need; `stacked` for bars that stand on one another. */
export function nameAxis(
  rows: readonly Row<unknown>[],
  { stacked = false } = {},
): NonNullable<ChartOptions['scales']>[string] {
  const room =
    Math.max(...rows.map((row) => textWidth(row.label, SIZE.text, row.item === null ? '600' : 'normal'))) +
    14;
  return {
    type: 'category',
    stacked,
    grid: { display: false },
    border: { display: false },
    ticks: {
      autoSkip: false,
      crossAlign: 'far',
      color: INK,
      padding: 8,
      font: (context: { index: number }) => ({
        size: SIZE.text,
        weight: rows[context.index]?.item === null ? 600 : 'normal',
      }),
    },
    afterFit: (scale: { width: number }) => {
      scale.width = room;
    },
  };
}

/** Room that the text columns take, CSS pixels. */
export function columnsRoom(columns: readonly TextColumn[]): number {
  return columns.reduce((sum, each) => sum + columnWidth(each) + COLUMN_GAP, 0);
}

/** Writes the text columns at the right of the plot, their heads level with the axis above it. */
export function textColumns(columns: readonly TextColumn[]): Plugin {
  return drawing('text columns', (context, chart) => {
    const names = chart.scales['y'];
    if (names === undefined) return;
    let x = chart.chartArea.right + COLUMN_GAP;
    context.textBaseline = 'middle';
    for (const each of columns) {
      context.fillStyle = MUTED;
      context.font = font(SIZE.small);
      each.head.forEach((line, index) => {
        context.fillText(line, x, chart.chartArea.top - 14 - 15 * (each.head.length - 1 - index));
      });
      context.fillStyle = INK;
      each.cells.forEach((cell, row) => {
        context.fillText(cell, x, names.getPixelForValue(row));
      });
      x += columnWidth(each) + COLUMN_GAP;
    }
  });
}

function columnWidth(each: TextColumn): number {
  return Math.ceil(Math.max(...[...each.head, ...each.cells].map((text) => textWidth(text, SIZE.small))));
}
