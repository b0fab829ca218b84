import { capital, exact, short, shortForms } from '../study/format.js';
import type { Estimate } from '../study/statistics/estimate.js';

/** A table of the page: the first cell of a row names the row. `note` explains what the cells are. */
export interface PageTable {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Names of the fields of an item that hold such a value. */
export type FieldOf<Item, Value> = Item extends object
  ? { [Name in keyof Item]: Item[Name] extends Value ? Name : never }[keyof Item]
  : never;

type Shown = string | number | null | Estimate;
/**
 * A column of a table: its head, and its cell of an item, in words or by the name of the field that it shows:
 * a text or number as it is, an estimate with its interval or in another form, nothing for null.
 */
export type Column<Item> =
  | readonly [head: string, cell: FieldOf<Item, Shown> | ((item: Item) => string)]
  | readonly [head: string, cell: FieldOf<Item, Estimate>, form: (estimate: Estimate) => string];

/** Head and rows of a table with a row an item. */
export function columns<Item>(
  items: readonly Item[],
  all: readonly Column<NoInfer<Item>>[],
): Pick<PageTable, 'head' | 'rows'> {
  return {
    head: all.map(([head]) => head),
    rows: items.map((item) => all.map((column) => cellText(item, column))),
  };
}

function cellText<Item>(item: Item, [, cell, form = short]: Column<Item>): string {
  if (typeof cell === 'function') return cell(item);
  const value = item[cell as keyof Item] as Shown;
  if (typeof value === 'number') return exact(value);
  return typeof value === 'object' && value !== null ? form(value) : (value ?? '');
}

/** With what stands in its cells in place of an interval explained in its note. */
export function explained(table: PageTable): PageTable {
  const forms = shortForms(table.rows.flat().join('\n'));
  return forms.length === 0 ? table : { ...table, note: `${table.note} ${capital(forms.join('; '))}.` };
}

/** A table without rows is left out. */
export const filled = (tables: readonly PageTable[]): PageTable[] =>
  tables.filter(({ rows }) => rows.length > 0);

/** A share in per cent with its interval in brackets. */
export const percent = (share: Estimate): string => short(share, 100);
