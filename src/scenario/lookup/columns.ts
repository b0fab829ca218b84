/** Columns with the names of what rows hold: numbers, or flags as 1 and 0. */
const named =
  <Column>(from: (values: number[]) => Column) =>
  <Key extends string>(
    rows: readonly Readonly<Record<Key, number | boolean>>[],
    ...keys: readonly Key[]
  ): Record<Key, Column> =>
    Object.fromEntries(keys.map((key) => [key, from(rows.map((row) => Number(row[key])))])) as Record<
      Key,
      Column
    >;
export const int32 = named((values) => Int32Array.from(values));
export const float64 = named((values) => Float64Array.from(values));
export const uint8 = named((values) => Uint8Array.from(values));

/** One number a row. */
export function column<Row>(rows: readonly Row[], value: (row: Row) => number): Int32Array {
  return Int32Array.from(rows, value);
}

/** Columns of which each row has any number of entries: those of row r are start[r] .. start[r + 1] - 1. */
export interface Ragged<Entry> {
  readonly start: Int32Array;
  readonly entries: readonly Entry[];
  /** One number an entry, rows in order. */
  column(value: (entry: Entry) => number): Int32Array;
}

export function ragged<Row, Entry>(
  rows: readonly Row[],
  entriesOf: (row: Row) => readonly Entry[],
): Ragged<Entry> {
  const lists = rows.map(entriesOf),
    entries = lists.flatMap((list) => list);
  let count = 0;
  const ends = lists.map((list) => (count += list.length));
  return {
    start: Int32Array.from([0, ...ends]),
    entries,
    column: (value) => Int32Array.from(entries, value),
  };
}

/** An entry that is there; a miss is a fault of the program. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new RangeError(`expected entry ${index} of ${list.length}, got none`);
  return entry;
}
