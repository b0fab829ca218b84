import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate } from '../../scenario/calendar/date.js';
import { Names } from '../names.js';
import { Oddities, type Oddity, type OddityKind } from '../oddity.js';
import { Unreadable } from '../unreadable.js';
import { Decoder } from './bytes.js';
import { amountIn, minutesIn } from './minutes.js';
import { type TimeColumns, timeColumns } from './named-columns.js';
import { decimalMark } from './numbers.js';
import { RowSplitter } from './rows.js';
import { strokesOf, TimeReader } from './times.js';

/** A row of a table, with its line in the file (of a workbook: its row). */
export interface TableLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** The times of one step, in the order of the table. */
export interface StepTimes {
  readonly step: string;
  readonly minutes: readonly number[];
  readonly lines: readonly number[];
  /** Minutes since 1970-01-01 by the clock of the table; NaN where a row has none. */
  readonly at: readonly number[];
  readonly by: Readonly<Record<string, readonly string[]>>;
}

/** A row that is not used, and why. */
export interface LeftOut extends TableLine {
  readonly kind: OddityKind;
}

export interface TimesRead {
  readonly head: readonly string[];
  /** By name of step, in the order in which they come. */
  readonly steps: readonly StepTimes[];
  /** Rows below the head: as many as there are times and rows left out. */
  readonly rows: number;
  readonly leftOut: readonly LeftOut[];
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

type Growing = { -readonly [Key in keyof StepTimes]: StepTimes[Key] } & {
  minutes: number[];
  lines: number[];
  at: number[];
  by: Record<string, string[]>;
};

/**
 * Times of steps from the rows of a table, the head first.
 * @param known names of the steps of the scenario; without it any name will do
 * @throws Unreadable where nothing can be read: no rows, no such column, decimals of two kinds
 */
export function readTimes(
  table: readonly TableLine[],
  columns: TimeColumns = {},
  known?: Iterable<string>,
): TimesRead {
  const [first, ...rows] = table.map(({ line, cells }) => ({ line, cells: cells.map(unguarded) }));
  if (first === undefined || rows.length === 0)
    throw new Unreadable(
      'expected a head and at least one row below it, got none',
      'a table of times begins with the names of its columns, such as step,minutes',
    );
  const head = first.cells,
    at = timeColumns(head, columns),
    cellOf = (row: TableLine, column: number): string => row.cells[column] ?? '',
    mark = markOf(rows.map((row) => cellOf(row, at.minutes))),
    dates = dateReader(rows.map((row) => cellOf(row, at.date))),
    names = new Names(known),
    oddities = new Oddities(),
    leftOut: LeftOut[] = [],
    seen = new Set<string>(),
    steps = new Map<string, Growing>();
  for (const row of rows) {
    const written = cellOf(row, at.step),
      text = cellOf(row, at.minutes),
      unit = cellOf(row, at.unit);
    const out = (kind: OddityKind, example: string, told: string): void => {
      oddities.add(kind, 'left out', row.line, example, `${told} Left out.`);
      leftOut.push({ ...row, kind });
    };
    const step = written === '' ? undefined : names.of(written),
      minutes = minutesIn(text, mark),
      when = dates(cellOf(row, at.date)),
      key = JSON.stringify([unit, written, minutes, when]);
    if (written === '') out('no step', row.cells.join(' '), 'The row names no step.');
    else if (step === undefined)
      out(
        'unknown step',
        written,
        `The scenario has no step ${JSON.stringify(written)}${names.hint(written)}`,
      );
    else if (Number.isNaN(minutes))
      out('unreadable number', text, 'Expected minutes, such as 42.5, "1.5 h" or "1:30".');
    else if (minutes < 0) out('negative time', text, 'A time below 0.');
    else if (minutes === 0) out('no time at all', text, 'A time of 0: nothing was clocked.');
    else if (unit !== '' && seen.has(key))
      out('duplicate', row.cells.join(' '), 'The same unit, step, date and time stand on a row above.');
    else {
      seen.add(key);
      if (Number.isNaN(when) && cellOf(row, at.date) !== '')
        oddities.add(
          'unreadable time',
          'taken as it is',
          row.line,
          cellOf(row, at.date),
          'Expected a date, such as 2027-08-16 or 16.08.2027. The time counts, its date does not.',
        );
      const of: Growing = steps.get(step) ?? { step, minutes: [], lines: [], at: [], by: {} };
      steps.set(step, of);
      of.minutes.push(minutes);
      of.lines.push(row.line);
      of.at.push(when);
      for (const [option, column] of Object.entries(at.by)) (of.by[option] ??= []).push(cellOf(row, column));
    }
  }
  return { head, steps: [...steps.values()], rows: rows.length, leftOut, oddities: oddities.list() };
}

function markOf(column: readonly string[]): '.' | ',' {
  const amounts = column.map(amountIn),
    mark = decimalMark(amounts);
  if (mark === 'both')
    throw new Unreadable(
      'expected one decimal mark in the column of minutes, got points and commas',
      'write all with a point, 12.5, or all with a comma, 12,5',
    );
  const unsure = mark === undefined ? amounts.find((text) => /^\d{1,3},\d{3}$/.test(text)) : undefined;
  if (unsure !== undefined)
    throw new Unreadable(
      `expected minutes that can be read in one way, got ${unsure}`,
      `write ${unsure.replace(',', '.')} or ${unsure.replace(',', '')}`,
    );
  return mark ?? '.';
}

/** Dates with or without a time of day; NaN for what is none, or may be read in two ways. */
function dateReader(column: readonly string[]): (text: string) => number {
  const withClock = (text: string): string => (text.includes(':') ? text : `${text} 00:00`),
    proven = new Set(column.flatMap((text) => strokesOf(withClock(text))?.proves ?? [])),
    reader = new TimeReader();
  if (proven.size === 1) [reader.strokes] = proven;
  return (text) => (text === '' ? NaN : (reader.read(withClock(text))?.minutes ?? NaN));
}

/** The day of such a time, `2027-08-16`. */
export const dayText = (minutes: number): string => isoDate(Math.floor(minutes / MINUTES_PER_DAY));
