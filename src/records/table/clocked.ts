import { type Mapping, Names } from '../names.js';
import { Oddities, type OddityKind } from '../oddity.js';
import { Unreadable } from '../unreadable.js';
import { amountIn, minutesIn } from './minutes.js';
import { type TimeColumns, timeColumns } from './named-columns.js';
import { type DecimalMark, decimalMark } from './numbers.js';
import { dateReader, headAndRows, type LeftOut, type TableLine, type TableRead } from './table.js';

/** The times of one step, in the order of the table. */
export interface StepTimes {
  readonly step: string;
  readonly minutes: readonly number[];
  readonly lines: readonly number[];
  /** Minutes since 1970-01-01 by the clock of the table; NaN where a row has none. */
  readonly at: readonly number[];
  /** Build numbers as they are written; '' where a row has none. */
  readonly units: readonly string[];
  readonly by: Readonly<Record<string, readonly string[]>>;
}

/** As many rows as there are times and rows left out. */
export interface TimesRead extends TableRead {
  /** By name of step, in the order in which they come. */
  readonly steps: readonly StepTimes[];
}

type Growing = { -readonly [Key in keyof StepTimes]: StepTimes[Key] } & {
  minutes: number[];
  lines: number[];
  at: number[];
  units: string[];
  by: Record<string, string[]>;
};

/**
 * Times of steps from the rows of a table, the head first.
 * @param known names of the steps of the scenario; without it any name will do
 * @param mapping what the table calls steps and options, and what the scenario does
 * @throws Unreadable where nothing can be read: no rows, no such column, decimals of two kinds
 */
export function readTimes(
  table: readonly TableLine[],
  columns: TimeColumns = {},
  known?: Iterable<string>,
  mapping: Mapping = {},
): TimesRead {
  const { head, rows } = headAndRows(table, 'step,minutes'),
    at = timeColumns(head, columns),
    cellOf = (row: TableLine, column: number): string => row.cells[column] ?? '',
    mark = markOf(rows.map((row) => cellOf(row, at.minutes))),
    dates = dateReader(rows.map((row) => cellOf(row, at.date))),
    names = new Names(known, mapping.steps),
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
      when = dates(cellOf(row, at.date))?.minutes ?? NaN,
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
      const of: Growing = steps.get(step) ?? { step, minutes: [], lines: [], at: [], units: [], by: {} };
      steps.set(step, of);
      of.minutes.push(minutes);
      of.lines.push(row.line);
      of.at.push(when);
      of.units.push(unit);
      for (const [option, column] of Object.entries(at.by))
        (of.by[mapping.options?.[option] ?? option] ??= []).push(cellOf(row, column));
    }
  }
  return { head, steps: [...steps.values()], rows: rows.length, leftOut, oddities: oddities.list() };
}

/**
 * The decimal mark of a column of minutes.
 * @throws Unreadable where it has both, or `1,234` where nothing shows which is meant
 */
export function markOf(column: readonly string[]): DecimalMark {
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
