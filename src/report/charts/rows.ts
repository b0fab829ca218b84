import type { Estimate } from '../../study/statistics/interval.js';
import { SIZE } from '../style.js';
import { fit } from '../text.js';

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

const NAME_ROOM = 330;

/** A name as it stands beside its bars: shortened if it is very long. */
export function rowLabel(name: string, weight: 'normal' | '600' = 'normal'): string {
  return fit(name, NAME_ROOM, SIZE.text, weight);
}

/** A row with nothing in it but its name. */
export const heading = (name: string): Row<never> => ({ label: rowLabel(name, '600'), item: null });

/** A row for each item, without headings. */
export function rowsOf<Item>(items: readonly Item[], name: (item: Item) => string): Row<Item>[] {
  return items.map((item) => ({ label: rowLabel(name(item)), item }));
}

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

/** One text a row, empty at headings. */
export function column<Item>(
  head: readonly string[],
  rows: readonly Row<Item>[],
  cell: (item: Item) => string,
): TextColumn {
  return { head, cells: rows.map((row) => (row.item === null ? '' : cell(row.item))) };
}

/** The interval of an estimate as a floating bar; `scale` 100 for per cent. */
export function span({ low, high }: Estimate, scale = 1): [number, number] | null {
  return low === null || high === null ? null : [low * scale, high * scale];
}
