import { capital, shortForms } from '../study/format.js';
import type { Estimate } from '../study/statistics/estimate.js';
import { type Cell, counted, estimated, textOf } from './sheets/cells.js';

/** A table of the page and a sheet: the first cell of a row names it. `note` explains what the cells are. */
export interface PageTable {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** The same in words alone. */
export interface TextTable extends PageTable {
  readonly rows: readonly (readonly string[])[];
}

/** Names of the fields of an item that hold such a value. */
export type FieldOf<Item, Value> = Item extends object
  ? { [Name in keyof Item]: Item[Name] extends Value ? Name : never }[keyof Item]
  : never;

type Shown = string | number | null | Estimate;
/**
 * A column of a table: its head, and its cell of an item, or the name of the field that it shows: a text or
 * number as it is, an estimate with its interval or in another form, nothing for null.
 */
export type Column<Item> =
  | readonly [head: string, cell: FieldOf<Item, Shown> | ((item: Item) => Cell)]
  | readonly [head: string, cell: FieldOf<Item, Estimate>, form: (estimate: Estimate) => Cell];

/** Head and rows of a table with a row an item. */
export function columns<Item>(
  items: readonly Item[],
  all: readonly Column<NoInfer<Item>>[],
): Pick<PageTable, 'head' | 'rows'> {
  return {
    head: all.map(([head]) => head),
    rows: items.map((item) => all.map((column) => cellOf(item, column))),
  };
}

function cellOf<Item>(item: Item, [, cell, form = estimated]: Column<Item>): Cell {
  if (typeof cell === 'function') return cell(item);
  const value = item[cell as keyof Item] as Shown;
  if (typeof value === 'number') return counted(value);
  return typeof value === 'object' && value !== null ? form(value) : (value ?? '');
}

/** In words, with what stands in its cells in place of an interval explained in its note. */
export function explained(table: PageTable): TextTable {
  const rows = table.rows.map((row) => row.map(textOf)),
    forms = shortForms(rows.flat().join('\n'));
  return {
    ...table,
    rows,
    note: forms.length === 0 ? table.note : `${table.note} ${capital(forms.join('; '))}.`,
  };
}

/** A table without rows is left out. */
export const filled = (tables: readonly PageTable[]): PageTable[] =>
  tables.filter(({ rows }) => rows.length > 0);
