import { capital, shortForms } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { isNarrow, LAYOUT } from '../style.js';
import { type Axis, roomForText } from './axes.js';
import { type Chart, chart, type Dataset, type Parts } from './chart.js';
import { whiskers } from './marks.js';
import { heightWithNames, mostLines, nameAxis, nameLines, roomBeside } from './row-names.js';
import {
  COLUMN_GAP,
  columnWidth,
  FIRST_GAP,
  NAMES_ROOM,
  NARROW_BAR,
  namesAbove,
  narrowRow,
  textColumns,
} from './row-texts.js';

/** A row of a chart with horizontal bars: a thing with its name, or the heading of a site (`item` null). */
export interface Row<Item> {
  readonly label: string;
  readonly item: Item | null;
  /** Of a heading with something drawn in its row. */
  readonly isDrawn?: boolean;
}
/**
 * A column of text at the right of the bars: its head, of at most two lines, and its cell of a row; beside a
 * heading there is none.
 */
type TextColumn<Item> = readonly [head: readonly string[], cell: (item: Item) => string];

/** A row with nothing in it but its name. */
export const heading = (label: string): Row<never> => ({ label, item: null });

/** A row for each item, without headings. */
export const rowsOf = <Item>(items: readonly Item[], name: (item: Item) => string): Row<Item>[] =>
  items.map((item) => ({ label: name(item), item }));

/** Rows under a heading for each site, sites and rows in the order in which they come. */
export function rowsBySite<Item extends { readonly name: string; readonly site: string }>(
  items: readonly Item[],
): Row<Item>[] {
  const sites = [...new Set(items.map((item) => item.site))];
  return sites.flatMap((site) => [
    heading(site),
    ...rowsOf(
      items.filter((item) => item.site === site),
      ({ name }) => name,
    ),
  ]);
}

/** One value a row, null at headings. */
export function perRow<Item, Value>(
  rows: readonly Row<Item>[],
  value: (item: Item) => Value,
): (Value | null)[] {
  return rows.map((row) => (row.item === null ? null : value(row.item)));
}

/** The interval of an estimate as a floating bar. */
export function span({ low, high }: Estimate, scale = 1): [number, number] | null {
  return low === null || high === null ? null : [low * scale, high * scale];
}

/** Intervals over the bars, or over marks that the chart draws itself. */
interface Intervals<Item> {
  /** What is measured, also of bars without a name of their own; empty where it is told by other words. */
  readonly of: string;
  /** See `intervalWords`. */
  readonly sure: string;
  /** See `span`. */
  readonly ends: (item: Item) => [number, number] | null;
  /** Where no bar shows the mean. */
  readonly mean?: (item: Item) => number | null;
}

const intervalLabel = ({ of, sure }: Intervals<never>): string => (of === '' ? '' : `${of}, ${sure}`);

/** A chart of horizontal bars: names at the left, values above, text at the right. */
export interface RowParts<Item> extends Omit<Parts, 'bodyHeight' | 'type' | 'data' | 'scales' | 'options'> {
  readonly rows: readonly Row<Item>[];
  readonly columns: readonly TextColumn<NoInfer<Item>>[];
  readonly values: Axis;
  readonly datasets?: readonly Dataset[];
  readonly intervals?: Intervals<NoInfer<Item>>;
  /** Bars stand on one another. */
  readonly stacked?: boolean;
  /** Bars of a row that stand one under another. */
  readonly abreast?: number;
  /** Height of the axis and the legend, and of each row; CSS pixels. */
  readonly above?: number;
  readonly each?: number;
  /** For names beside their bars, at most; CSS pixels. */
  readonly nameRoom?: number;
}

export function rowChart<Item>({
  rows,
  columns,
  values,
  datasets = [],
  intervals,
  stacked = false,
  abreast = 1,
  above = 64,
  each = rowHeight(rows.length) + 4,
  nameRoom,
  plugins = [],
  ...parts
}: RowParts<Item>): Chart {
  const texts = columns.map(([head, cell]) => ({ head, cells: perRow(rows, cell) }));
  // Bars that are not painted give the axis its ends, and the page its numbers.
  const unseen = { backgroundColor: 'transparent', grouped: false },
    named = datasets.map((set) => ({ label: intervals?.of ?? '', ...set })),
    means =
      intervals?.mean === undefined
        ? []
        : [{ label: intervals.of, data: perRow(rows, intervals.mean), ...unseen }],
    spans =
      intervals === undefined
        ? []
        : [{ label: intervalLabel(intervals), data: perRow(rows, intervals.ends), ...unseen }],
    all: readonly Dataset[] = [...named, ...means, ...spans];
  const narrow = isNarrow(),
    names = nameLines(rows, narrow ? LAYOUT.width - NAMES_ROOM : roomBeside(nameRoom)),
    height = narrow ? narrowRow(abreast, mostLines(names)) : heightWithNames(names, each);
  const forms = shortForms(texts.flatMap(({ cells }) => cells).join('\n'));
  return chart({
    ...parts,
    how: forms.length === 0 ? parts.how : `${parts.how} ${capital(forms.join('; '))}.`,
    bodyHeight: above + rows.length * height,
    type: 'bar',
    data: {
      labels: rows.map(({ label }) => label),
      datasets: all.map((set) => (narrow ? { ...set, barThickness: NARROW_BAR } : set)),
    },
    options: { indexAxis: 'y' },
    scales: {
      x: { ...values, position: 'top' },
      y: nameAxis(rows, narrow ? null : names, stacked),
      room: roomForText(
        narrow
          ? 16
          : texts.reduce((room, text) => room + columnWidth(text) + COLUMN_GAP, FIRST_GAP - COLUMN_GAP),
      ),
    },
    plugins: [
      ...plugins,
      ...spans.map((_, i) => whiskers(all.length - 1 + i)),
      narrow ? namesAbove(rows, names, texts, abreast) : textColumns(texts),
    ],
  });
}

/** Height of one row, CSS pixels: closer when there are many. */
export function rowHeight(rows: number): number {
  return rows > 30 ? 21 : 26;
}
