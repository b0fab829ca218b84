import { fitColumns } from '../shorten.js';

/**
 * A column of a plain text table; `most` is the greatest width in characters, longer cells lose their middle.
 */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  readonly most?: number;
}

/** A column with what stands in it of an item. */
export interface CellColumn<Item> extends Column {
  readonly cell: (item: Item) => string;
}

/** A table with a row an item. */
export function tableOf<Item>(items: readonly Item[], columns: readonly CellColumn<Item>[]): string {
  return table(
    items.map((item) => columns.map(({ cell }) => cell(item))),
    columns,
  );
}

/**
 * Rows of text aligned in columns two spaces apart, with a head and a rule under it; no blanks at line ends.
 * Widths count characters (code points). Every row has one cell a column, else a RangeError.
 */
export function table(rows: readonly (readonly string[])[], columns: readonly Column[]): string {
  for (const row of rows) {
    if (row.length !== columns.length)
      throw new RangeError(`row of a table: expected ${columns.length} cells, got ${row.length}`);
  }
  const cells = [columns.map((column) => column.head), ...rows].map((row) =>
    row.map((cell, index) => fitColumns(cell, columns[index]?.most ?? Infinity)),
  );
  const widths = columns.map((_, index) => Math.max(...cells.map((row) => width(row[index] ?? ''))));
  const lines = cells.map((row) =>
    row
      .map((cell, index) => {
        const gap = ' '.repeat((widths[index] ?? 0) - width(cell));
        return columns[index]?.align === 'right' ? gap + cell : cell + gap;
      })
      .join('  ')
      .trimEnd(),
  );
  const rule = widths.map((each) => '-'.repeat(each)).join('  ');
  return [lines[0], rule, ...lines.slice(1)].join('\n');
}

function width(text: string): number {
  return Array.from(text).length;
}
