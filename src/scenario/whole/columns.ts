/** One number a row. */
export function column<Row>(rows: readonly Row[], value: (row: Row) => number): Int32Array {
  return Int32Array.from(rows, value);
}

/** Starts of a ragged column: entries of row r are start[r] .. start[r + 1] - 1. */
export function starts<Row>(rows: readonly Row[], entries: (row: Row) => readonly unknown[]): Int32Array {
  const start = new Int32Array(rows.length + 1);
  rows.forEach((row, i) => {
    start[i + 1] = start[i] + entries(row).length;
  });
  return start;
}

/** One number an entry of a ragged column, rows in order. */
export function entriesOf<Row, Entry>(
  rows: readonly Row[],
  entries: (row: Row) => readonly Entry[],
  value: (entry: Entry) => number,
): Int32Array {
  return Int32Array.from(rows.flatMap((row) => entries(row).map(value)));
}
