import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate } from '../../scenario/calendar/date.js';
import type { Oddity, OddityKind } from '../oddity.js';
import { Unreadable } from '../unreadable.js';
import { Decoder } from './bytes.js';
import { RowSplitter } from './rows.js';
import { strokesOf, TimeReader } from './times.js';

/** A row of a table, with its line in the file (of a workbook: its row). */
export interface TableLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A row that is not used, and why. */
export interface LeftOut extends TableLine {
  readonly kind: OddityKind;
}

/** What is told of any table that was read. */
export interface TableRead {
  readonly head: readonly string[];
  /** Rows below the head: those used and those left out. */
  readonly rows: number;
  readonly leftOut: readonly LeftOut[];
  /** Rows used, where those left out are not listed: of a floor log. */
  readonly used?: number;
  readonly oddities: readonly Oddity[];
}

/** The rows of a table of text: CSV with any of three separators, in the encodings in which it is saved. */
export function tableLines(bytes: Uint8Array): TableLine[] {
  const lines: TableLine[] = [],
    decoder = new Decoder(),
    splitter = new RowSplitter((cells, line) => void lines.push({ line, cells: cells.all() }));
  splitter.push(decoder.push(bytes));
  splitter.push(decoder.end());
  splitter.end();
  return lines;
}

/** A quote before what a spreadsheet would take for a formula is a guard, as our own tables have it. */
const unguarded = (cell: string): string => (/^'[=+\-@]/.test(cell) ? cell.slice(1) : cell);

/**
 * Head and rows of a table.
 * @param example of a head
 * @throws Unreadable where there is no row below the head
 */
export function headAndRows(
  table: readonly TableLine[],
  example: string,
): { readonly head: readonly string[]; readonly rows: readonly TableLine[] } {
  const [first, ...rows] = table.map(({ line, cells }) => ({ line, cells: cells.map(unguarded) }));
  if (first === undefined || rows.length === 0)
    throw new Unreadable(
      'expected a head and at least one row below it, got none',
      `the table begins with the names of its columns, such as ${example}`,
    );
  return { head: first.cells, rows };
}

/**
 * Dates with or without a time of day, by the clock of the table; undefined for what is none, or may be read
 * in two ways.
 */
export function dateReader(column: readonly string[]): (text: string) => ReturnType<TimeReader['read']> {
  const withClock = (text: string): string => (text.includes(':') ? text : `${text} 00:00`),
    proven = new Set(column.flatMap((text) => strokesOf(withClock(text))?.proves ?? [])),
    reader = new TimeReader();
  if (proven.size === 1) [reader.strokes] = proven;
  return (text) => (text === '' ? undefined : reader.read(withClock(text)));
}

/** The day of a time in minutes since 1970-01-01, `2027-08-16`. */
export const dayText = (minutes: number): string => isoDate(Math.floor(minutes / MINUTES_PER_DAY));
