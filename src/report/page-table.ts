import { short } from '../study/format.js';
import type { Estimate } from '../study/statistics/interval.js';

/** A table of the page: the first cell of a row names the row. `note` explains what the cells are. */
export interface PageTable {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A column of a table: its head, and its cell of an item. */
export type Column<Item, Cell = string> = readonly [head: string, cell: (item: Item) => Cell];

/** Head and rows of a table with a row an item. */
export function columns<Item>(
  items: readonly Item[],
  all: readonly Column<Item>[],
): Pick<PageTable, 'head' | 'rows'> {
  return {
    head: all.map(([head]) => head),
    rows: items.map((item) => all.map(([, cell]) => cell(item))),
  };
}

/** A table without rows is left out. */
export const filled = (tables: readonly PageTable[]): PageTable[] =>
  tables.filter(({ rows }) => rows.length > 0);

/** A share in per cent with its interval in brackets. */
export const percent = (share: Estimate): string => short(share, 100);
