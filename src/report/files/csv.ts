import type { Estimate } from '../../study/statistics/estimate.js';
import type { FieldOf } from '../columns.js';

type Cell = string | number | null | undefined;

/** A column of a file: its head, and its cell of an item or the name of the field that it shows. */
export type CsvColumn<Item> = readonly [head: string, cell: FieldOf<Item, Cell> | ((item: Item) => Cell)];

/**
 * Comma-separated text by RFC 4180, but with bare line feeds: a head, then a row an item. Numbers are rounded
 * to 10 significant digits. A text that a spreadsheet would take for a formula has a quote before it.
 */
export function csv<Item>(items: readonly Item[], columns: readonly CsvColumn<NoInfer<Item>>[]): string {
  const rows = items.map((item) =>
    columns.map(([, cell]) => (typeof cell === 'function' ? cell(item) : (item[cell as keyof Item] as Cell))),
  );
  return [columns.map(([head]) => head), ...rows].map((row) => row.map(field).join(',') + '\n').join('');
}

/** The columns of an estimate: its mean and the ends of its interval. */
export function estimate<Item>(
  name: string,
  of: (item: Item) => Estimate | null | undefined,
): CsvColumn<Item>[] {
  return [
    [`${name}_mean`, (item) => of(item)?.mean],
    [`${name}_low`, (item) => of(item)?.low],
    [`${name}_high`, (item) => of(item)?.high],
  ];
}

/** The same of a measure, and the replications that would do where they are too few for an interval. */
export const measure = <Item>(
  name: string,
  of: (item: Item) => Estimate | null | undefined,
): CsvColumn<Item>[] => [...estimate(name, of), [`${name}_needs`, (item) => of(item)?.needs]];

/** The columns of a proportion: its share and the ends of its interval. */
export function proportion<Item>(
  name: string,
  of: (item: Item) => { share: number; low: number; high: number } | null | undefined,
): CsvColumn<Item>[] {
  return [
    [`${name}_share`, (item) => of(item)?.share],
    [`${name}_low`, (item) => of(item)?.low],
    [`${name}_high`, (item) => of(item)?.high],
  ];
}

function field(cell: Cell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell === 'number') return String(Number(cell.toPrecision(10)));
  // A spreadsheet would run it (OWASP, CSV injection; from memory).
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
