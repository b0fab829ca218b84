import { nearest } from '../../scenario/values/nearest.js';
import { FAILED } from '../log/of-run.js';
import { type Mapping, Names } from '../names.js';
import { Oddities, type OddityKind } from '../oddity.js';
import { columnFinder } from './named-columns.js';
import { dateReader, headAndRows, type LeftOut, type TableLine, type TableRead } from './table.js';

/** What the planner calls the columns of a table of what inspections found. */
export interface CountColumns {
  readonly step?: string | undefined;
  readonly defect?: string | undefined;
  readonly found?: string | undefined;
  readonly units?: string | undefined;
  readonly unit?: string | undefined;
  readonly date?: string | undefined;
  readonly by?: readonly string[] | undefined;
}

/** Units that one inspection looked at for one kind of defect. */
export interface CountedLook {
  readonly step: string;
  /** Kind of defect; `failed` of a test. */
  readonly defect: string;
  /** Build number; '' of several units, or where the row has none. */
  readonly unit: string;
  readonly units: number;
  /** Of them, 0..units. */
  readonly found: number;
  /** Minutes since 1970-01-01 by the clock of the table; NaN where the row has no date. */
  readonly at: number;
  /** Without those that the row does not tell. */
  readonly options: Readonly<Record<string, string>>;
}

export interface CountsRead extends TableRead {
  /** A row a unit, or a row for several units with their number. */
  readonly form: 'units' | 'counts';
  readonly looks: readonly CountedLook[];
}

/** What a scenario knows of inspections. */
export interface KnownLooks {
  readonly steps: Iterable<string>;
  readonly defects: readonly string[];
  /** Of each step the kinds that it looks for, `failed` of a test. */
  readonly kinds: ReadonlyMap<string, readonly string[]>;
}

const YES = /^(yes|y|true|x)$/i,
  NO = /^(no|n|false|-)$/i,
  WHOLE = /^\d{1,9}$/;

/**
 * What inspections found, from the rows of a table, the head first. Where there is a column of units each row
 * is a count; else it is one unit, with yes or no, or how many of the defect it had.
 * @throws Unreadable where nothing can be read: no rows, no such column
 */
export function readCounts(
  table: readonly TableLine[],
  columns: CountColumns = {},
  known?: KnownLooks,
  mapping: Mapping = {},
): CountsRead {
  const { head, rows } = headAndRows(table, 'step,defect,found'),
    { find, perhaps, by } = columnFinder(head),
    at = {
      step: find(columns.step ?? 'step', '--step'),
      found: find(columns.found ?? 'found', '--found'),
      defect: perhaps(columns.defect, 'defect', '--defect'),
      units: perhaps(columns.units, 'units', '--units'),
      unit: perhaps(columns.unit, 'unit', '--unit'),
      date: perhaps(columns.date, 'date', '--date'),
    },
    options = Object.entries(by(columns.by)),
    cellOf = (row: TableLine, column: number): string => row.cells[column] ?? '',
    dates = dateReader(rows.map((row) => cellOf(row, at.date))),
    steps = new Names(known?.steps, mapping.steps),
    defects = new Map(Object.entries(mapping.defects ?? {})),
    oddities = new Oddities(),
    leftOut: LeftOut[] = [],
    looks: CountedLook[] = [],
    seen = new Set<string>();
  for (const row of rows) {
    const out = (kind: OddityKind, example: string, told: string): void => {
      oddities.add(kind, 'left out', row.line, example, `${told} Left out.`);
      leftOut.push({ ...row, kind });
    };
    const written = cellOf(row, at.step),
      step = written === '' ? undefined : steps.of(written);
    if (step === undefined) {
      if (written === '') out('no step', row.cells.join(' '), 'The row names no step.');
      else
        out(
          'unknown step',
          written,
          `The scenario has no step ${JSON.stringify(written)}${steps.hint(written)}`,
        );
      continue;
    }
    const called = cellOf(row, at.defect),
      named = defects.get(called) ?? called,
      sought = known?.kinds.get(step) ?? [],
      defect =
        named !== '' ? named : known === undefined ? FAILED : sought.length === 1 ? sought[0] : undefined;
    if (defect === undefined) {
      out(
        'no defect',
        row.cells.join(' '),
        sought.length === 0
          ? `${JSON.stringify(step)} looks for nothing in the scenario.`
          : `The row names no defect, and ${JSON.stringify(step)} looks for ${sought.join(', ')}.`,
      );
      continue;
    }
    if (known !== undefined && defect !== FAILED && !known.defects.includes(defect)) {
      const near = nearest(defect, known.defects);
      out(
        'unknown defect',
        defect,
        `The scenario has no defect ${JSON.stringify(defect)}` +
          (near === undefined ? '.' : `, did you mean "${near}"?`),
      );
      continue;
    }
    const answer = cellOf(row, at.found),
      number = WHOLE.test(answer) ? Number(answer) : YES.test(answer) ? 1 : NO.test(answer) ? 0 : NaN,
      many = cellOf(row, at.units),
      units = at.units < 0 ? 1 : WHOLE.test(many) ? Number(many) : NaN,
      // However often it is on one unit.
      found = at.units < 0 ? Math.min(1, number) : number,
      unit = at.units < 0 ? cellOf(row, at.unit) : '',
      when = dates(cellOf(row, at.date))?.minutes ?? NaN,
      key = JSON.stringify([unit, step, defect, found, when]);
    if (Number.isNaN(number))
      out('unreadable answer', answer, 'Expected yes or no, or how many were found, such as 3.');
    else if (Number.isNaN(units) || units === 0)
      out('unreadable number', many, 'Expected a whole number of units from 1.');
    else if (found > units)
      out('more found than units', row.cells.join(' '), 'More units with it than units looked at.');
    else if (unit !== '' && seen.has(key))
      out(
        'duplicate',
        row.cells.join(' '),
        'The same unit, step, defect, date and answer stand on a row above.',
      );
    else {
      seen.add(key);
      if (Number.isNaN(when) && cellOf(row, at.date) !== '')
        oddities.add(
          'unreadable time',
          'taken as it is',
          row.line,
          cellOf(row, at.date),
          'Expected a date, such as 2027-08-16 or 16.08.2027. The row counts, its date does not.',
        );
      const told = options.flatMap(([name, column]) => {
        const value = cellOf(row, column);
        return value === '' ? [] : [[mapping.options?.[name] ?? name, value] as const];
      });
      looks.push({ step, defect, unit, units, found, at: when, options: Object.fromEntries(told) });
    }
  }
  const form = at.units < 0 ? 'units' : 'counts';
  return { head, rows: rows.length, leftOut, oddities: oddities.list(), form, looks };
}
