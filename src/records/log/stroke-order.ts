import { Decoder } from '../table/bytes.js';
import { RowSplitter } from '../table/rows.js';
import { type StrokeOrder, strokesOf } from '../table/times.js';
import { Unreadable } from '../unreadable.js';
import { type Columns, columnsOf } from './columns.js';

/** The bytes of a file from its start, as often as they are asked for. */
export type Open = () => AsyncIterable<Uint8Array> | Iterable<Uint8Array>;

/** So many rows are looked at to see whether the file has dates with strokes. */
const FIRST_ROWS = 100;

/**
 * Whether dates with strokes have the month first (`08/16/2027`) or the day; the whole file is asked, and a
 * number above 12 tells. Undefined: its first rows have no such dates.
 * @throws Unreadable where nothing tells, or some rows say the one and some the other
 */
export async function strokeOrder(open: Open): Promise<StrokeOrder | undefined> {
  const decoder = new Decoder(),
    proven: Partial<Record<StrokeOrder, { readonly line: number; readonly text: string }>> = {};
  let columns: Columns | undefined,
    rows = 0,
    first = '';
  const splitter = new RowSplitter((cells, line) => {
    if (columns === undefined) {
      columns = columnsOf(cells.all());
      return;
    }
    rows++;
    const { at, form } = columns,
      times = form === 'events' ? [at.at] : [at.arrived, at.started, at.ended];
    for (const column of times) {
      const text = cells.at(column),
        strokes = strokesOf(text);
      if (strokes === undefined) continue;
      first ||= text;
      if (strokes.proves !== undefined) proven[strokes.proves] ??= { line, text };
    }
  });
  for await (const part of open()) {
    splitter.push(decoder.push(part));
    if (rows >= FIRST_ROWS && first === '') return undefined;
  }
  splitter.push(decoder.end());
  splitter.end();
  if (first === '') return undefined;
  const { day, month } = proven,
    remedy = 'write times as 2027-08-16T06:00, or dates as 16.08.2027';
  if (day !== undefined && month !== undefined)
    throw new Unreadable(
      `expected dates that all begin with the day or all with the month, got ${day.text} on line ${day.line} ` +
        `and ${month.text} on line ${month.line}`,
      remedy,
    );
  if (day === undefined && month === undefined)
    throw new Unreadable(
      `expected dates that show whether the day or the month comes first, got none above 12, such as ${first}`,
      remedy,
    );
  return day === undefined ? 'month' : 'day';
}
