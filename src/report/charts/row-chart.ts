import type { Plugin } from 'chart.js';
import { font, textWidth } from '../canvas.js';
import { axisOf, drawing } from '../drawing.js';
import { INK, MUTED, PALETTE, SIZE } from '../style.js';
import { type Axis, roomForText } from './axes.js';
import { type Chart, chart, type Dataset, type Parts } from './chart.js';
import type { Row, TextColumn } from './rows.js';

const COLUMN_GAP = 22;

/** A chart of horizontal bars: names at the left, values above, text at the right. */
interface RowParts<Item> extends Omit<Parts, 'type' | 'data' | 'scales' | 'options'> {
  readonly rows: readonly Row<Item>[];
  readonly columns: readonly TextColumn[];
  readonly values: Axis;
  readonly datasets: readonly Dataset[];
  /** Bars stand on one another. */
  readonly stacked?: boolean;
}

export function rowChart<Item>({
  rows,
  columns,
  values,
  datasets,
  stacked = false,
  plugins = [],
  ...parts
}: RowParts<Item>): Chart {
  return chart({
    ...parts,
    type: 'bar',
    data: { labels: rows.map(({ label }) => label), datasets: [...datasets] },
    options: { indexAxis: 'y' },
    scales: { x: values, y: nameAxis(rows, stacked), room: roomForText(columnsRoom(columns)) },
    plugins: [...plugins, textColumns(columns)],
  });
}

/** Height of one row, CSS pixels: closer when there are many. */
export function rowHeight(rows: number): number {
  return rows > 30 ? 21 : 26;
}

/** A bar a row from zero, of `thickness` of the row's height. */
export function bars(
  label: string,
  data: readonly (number | null)[],
  { colour = PALETTE.blue, thickness = 0.7 }: { colour?: string | string[]; thickness?: number } = {},
): Dataset {
  return {
    label,
    data: [...data],
    backgroundColor: colour,
    grouped: false,
    barPercentage: thickness,
    categoryPercentage: 1,
  };
}

/** Intervals as bars that are not painted; `whiskers` draws over them. */
export function spans(label: string, data: readonly ([low: number, high: number] | null)[]): Dataset {
  return { label, data: [...data], backgroundColor: 'transparent', grouped: false };
}

/** The axis of names at the left, as wide as the names need. */
function nameAxis(rows: readonly Row<unknown>[], stacked: boolean): Axis {
  const weight = (row: Row<unknown> | undefined): 'normal' | '600' => (row?.item === null ? '600' : 'normal');
  const room = Math.max(...rows.map((row) => textWidth(row.label, SIZE.text, weight(row)))) + 14;
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
      font: ({ index }: { index: number }) => ({
        size: SIZE.text,
        weight: rows[index]?.item === null ? 600 : 'normal',
      }),
    },
    afterFit: (scale: { width: number }) => {
      scale.width = room;
    },
  };
}

/** Room that the text columns take, CSS pixels. */
function columnsRoom(columns: readonly TextColumn[]): number {
  return columns.reduce((room, each) => room + columnWidth(each) + COLUMN_GAP, 0);
}

/** Writes the text columns at the right of the plot, their heads level with the axis above it. */
function textColumns(columns: readonly TextColumn[]): Plugin {
  return drawing('text columns', (context, chart) => {
    const names = axisOf(chart, 'y');
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
