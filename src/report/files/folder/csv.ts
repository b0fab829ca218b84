import type { Estimate } from '../../../study/statistics/estimate.js';
import { tenDigits } from '../../../study/ten-digits.js';
import type { FieldOf } from '../../columns.js';
import type { Form } from '../../sheets/cells.js';

type Value = string | number | null | undefined;

/**
 * A column of a file: its head, its cell of an item or the name of the field that it shows, and what its
 * values are where they are neither plain numbers nor names.
 */
export type FileColumn<Item> = readonly [
  head: string,
  cell: FieldOf<Item, Value> | ((item: Item) => Value),
  form?: Form,
];

/** What a CSV file and a sheet of its name hold: a row an item. Numbers have 10 significant digits. */
export interface FileTable {
  readonly head: readonly string[];
  readonly forms: readonly (Form | undefined)[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** Head and rows of a file; '' is an empty cell. */
export function fileTable<Item>(
  items: readonly Item[],
  columns: readonly FileColumn<NoInfer<Item>>[],
): FileTable {
  return {
    head: columns.map(([head]) => head),
    forms: columns.map(([, , form]) => form),
    rows: items.map((item) =>
      columns.map(([, cell]) => {
        const value = typeof cell === 'function' ? cell(item) : (item[cell as keyof Item] as Value);
        return typeof value === 'number' ? tenDigits(value) : (value ?? '');
      }),
    ),
  };
}

/**
 * Comma-separated text by RFC 4180, but with bare line feeds. A text that a spreadsheet would take for a
 * formula has a quote before it. `between`: tabs for the clipboard of a spreadsheet.
 */
export const csv = ({ head, rows }: FileTable, between: ',' | '\t' = ','): string =>
  [head, ...rows].map((row) => row.map(field).join(between) + '\n').join('');

/** The columns of an estimate: its mean and the ends of its interval. */
export function estimate<Item>(
  name: string,
  of: (item: Item) => Estimate | null | undefined,
  form: Form = 'number',
): FileColumn<Item>[] {
  return [
    [`${name}_mean`, (item) => of(item)?.mean, form],
    [`${name}_low`, (item) => of(item)?.low, form],
    [`${name}_high`, (item) => of(item)?.high, form],
  ];
}

/** The same of a measure, and the replications that would do where they are too few for an interval. */
export const measure = <Item>(
  name: string,
  of: (item: Item) => Estimate | null | undefined,
  form: Form = 'number',
): FileColumn<Item>[] => [...estimate(name, of, form), [`${name}_needs`, (item) => of(item)?.needs, 'count']];

/** The columns of a proportion: its share and the ends of its interval. */
export function proportion<Item>(
  name: string,
  of: (item: Item) => { share: number; low: number; high: number } | null | undefined,
): FileColumn<Item>[] {
  return [
    [`${name}_share`, (item) => of(item)?.share, 'share'],
    [`${name}_low`, (item) => of(item)?.low, 'share'],
    [`${name}_high`, (item) => of(item)?.high, 'share'],
  ];
}

function field(cell: string | number): string {
  if (typeof cell === 'number') return String(cell);
  // A spreadsheet would run it (OWASP, CSV injection; from memory).
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
