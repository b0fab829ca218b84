import type { Sheet, SheetCell } from './layout.js';

/** How many letters wide a value is as its format shows it. */
export type Measure = (value: SheetCell['value'], format?: string) => number;

/** In letters; a longer text goes on in a further line of its cell. */
const LEAST_WIDTH = 8,
  MOST_WIDTH = 80,
  MARGIN = 2;
/** In points, of a line of 11 points. */
const LINE = 15,
  /** What a row may have in Excel (its specifications and limits). */
  MOST_HEIGHT = 409;

/** Widths of columns in letters, heights in points of the rows (head first) that need more than a line. */
export function sizes(
  { head, rows }: Sheet,
  measure: Measure,
): { readonly widths: readonly number[]; readonly heights: ReadonlyMap<number, number> } {
  const room = head.map((text, column) => roomOf(text, column, rows, measure)),
    heights = new Map<number, number>();
  [head.map((value): SheetCell => ({ value })), ...rows].forEach((row, r) => {
    const lines = Math.max(
      1,
      ...row.map(({ value }, column) =>
        typeof value === 'string' ? linesOf(value, room[column] ?? MOST_WIDTH, measure) : 1,
      ),
    );
    if (lines > 1) heights.set(r, Math.min(MOST_HEIGHT, lines * LINE));
  });
  return { widths: room.map((width) => width + MARGIN), heights };
}

/** As wide as what is in a column; a head, which may be broken, only as its longest word. */
function roomOf(
  head: string,
  column: number,
  rows: readonly (readonly SheetCell[])[],
  measure: Measure,
): number {
  let width = Math.max(LEAST_WIDTH, ...head.split(' ').map((word) => measure(word)));
  for (const row of rows) {
    const cell = row[column];
    if (cell !== undefined) width = Math.max(width, measure(cell.value, cell.format));
  }
  return Math.min(MOST_WIDTH, width);
}

function linesOf(text: string, room: number, measure: Measure): number {
  if (text.length < room && !text.includes('\n') && measure(text) <= room) return 1;
  let lines = 0;
  for (const line of text.split('\n')) {
    let used = 0;
    lines += 1;
    for (const word of line.split(' ')) {
      const width = measure(word);
      if (used > 0 && used + 1 + width > room) {
        lines += 1;
        used = 0;
      }
      lines += Math.max(0, Math.ceil(width / room) - 1);
      used += (used > 0 ? 1 : 0) + (width % room || Math.min(width, room));
    }
  }
  return lines;
}
