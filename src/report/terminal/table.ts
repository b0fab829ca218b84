import { exact } from '../../study/format.js';
import type { FieldOf } from '../columns.js';
import { lines, widthOf } from './lines.js';
import { fitted } from './widths.js';

/** A column of a plain text table. One aligned right holds numbers. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

/** A column with its cell of an item, in words or by the name of the field that it shows. */
export interface CellColumn<Item> extends Column {
  readonly cell: FieldOf<Item, string | number | null> | ((item: Item) => string);
}

/** A table with a row an item. */
export function tableOf<Item>(
  items: readonly Item[],
  columns: readonly CellColumn<NoInfer<Item>>[],
): (width: number) => string {
  const textOf = (item: Item, { cell }: CellColumn<Item>): string => {
    if (typeof cell === 'function') return cell(item);
    const value = item[cell as keyof Item];
    return typeof value === 'number' ? exact(value) : String(value ?? '');
  };
  return table(
    items.map((item) => columns.map((column) => textOf(item, column))),
    columns,
  );
}

const GAP = '  ';

/**
 * Rows of text aligned in columns two spaces apart, with a head and a rule under it; no blanks at line ends.
 * Nothing is cut: where it is wider than the width in characters that it is given at last, heads and texts go
 * on in further lines, figures whole; where even that is too wide, each row stands as a list of its own.
 * Every row has one cell a column, else a RangeError.
 */
export function table(
  rows: readonly (readonly string[])[],
  columns: readonly Column[],
): (width: number) => string {
  for (const row of rows) {
    if (row.length !== columns.length)
      throw new RangeError(`row of a table: expected ${columns.length} cells, got ${row.length}`);
  }
  return (width) => laidOut(rows, columns, width);
}

function laidOut(rows: readonly (readonly string[])[], columns: readonly Column[], width: number): string {
  const heads = columns.map(({ head }) => head),
    widths = fitted([heads, ...rows], columns, width - GAP.length * (columns.length - 1));
  if (widths === null) return listed(rows, heads, width);
  const head = heads.map((text, c) => lines(text, '', widths[c]));
  const most = Math.max(...head.map(({ length }) => length));
  return [
    ...lined(
      head.map((cell) => [...Array<string>(most - cell.length).fill(''), ...cell]),
      columns,
      widths,
    ),
    widths.map((each) => '-'.repeat(each)).join(GAP),
    ...rows.flatMap((row) =>
      lined(
        row.map((cell, c) => cellLines(cell, widths[c] ?? 0)),
        columns,
        widths,
      ),
    ),
  ].join('\n');
}

/** Each row as a list of its own, below the head of what they are of. */
function listed(rows: readonly (readonly string[])[], heads: readonly string[], width: number): string {
  const head = heads.find((each) => each !== '');
  return [
    ...(head === undefined ? [] : lines(`${head}:`, '  ', width)),
    ...rows.flatMap((row) => asList(row, heads, width)),
  ].join('\n');
}

/** A cell keeps its indent; what goes on stands two further in. */
function cellLines(cell: string, width: number): string[] {
  if (widthOf(cell) <= width) return [cell];
  const indent = ' '.repeat(cell.length - cell.trimStart().length);
  return lines(cell, `${indent}  `, width, indent);
}

/** Cells of several lines beside one another. */
function lined(
  cells: readonly (readonly string[])[],
  columns: readonly Column[],
  widths: readonly number[],
): string[] {
  return Array.from({ length: Math.max(1, ...cells.map(({ length }) => length)) }, (_, l) =>
    cells
      .map((cell, c) => {
        const text = cell[l] ?? '',
          gap = ' '.repeat(Math.max(0, (widths[c] ?? 0) - widthOf(text)));
        return columns[c]?.align === 'right' ? gap + text : text + gap;
      })
      .join(GAP)
      .trimEnd(),
  );
}

/** What has no head and the first that has one, then each cell below with its head. */
function asList(row: readonly string[], heads: readonly string[], width: number): string[] {
  const named = heads.findIndex((head) => head !== '') + 1,
    title = row.slice(0, named).join(' ').trimEnd(),
    indent = ' '.repeat(title.length - title.trimStart().length);
  return [
    ...lines(title, `${indent}    `, width, indent),
    ...row
      .slice(named)
      .map((cell, i) => [heads[named + i] ?? '', cell] as const)
      .filter(([, cell]) => cell !== '')
      .flatMap(([head, cell]) => lines(`${head}: ${cell}`, `${indent}    `, width, `${indent}  `)),
  ];
}
