import type { FieldOf } from '../columns.js';
import { fitColumns } from '../shorten.js';

/**
 * A column of a plain text table; `most` is the greatest width in characters, longer cells lose their middle.
 */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  readonly most?: number;
}

/** A column with its cell of an item, in words or by the name of the field that it shows. */
export interface CellColumn<Item> extends Column {
  readonly cell: FieldOf<Item, string | number | null> | ((item: Item) => string);
}

/** A table with a row an item. */
export function tableOf<Item>(items: readonly Item[], columns: readonly CellColumn<NoInfer<Item>>[]): string {
  return table(
    items.map((item) =>
      columns.map(({ cell }) =>
        typeof cell === 'function' ? cell(item) : String(item[cell as keyof Item] ?? ''),
      ),
    ),
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

/** Greatest width of what a command prints, characters. */
const WIDTH = 100;

/** Text broken at spaces into lines of at most the width, later ones indented. */
export function lines(text: string, indent = ''): string[] {
  const broken: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && line.length + 1 + word.length > WIDTH) {
      broken.push(line);
      line = indent + word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...broken, line];
}

/** Pieces of one or more lines below one another; what is wider than the width loses its middle. */
export function joined(pieces: readonly string[]): string {
  return pieces
    .flatMap((piece) => piece.split('\n'))
    .map((line) => fitColumns(line, WIDTH))
    .join('\n');
}
