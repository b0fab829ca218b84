import { z } from 'zod';
import type { Distribution } from '../../random/distribution.js';
import { leastOf } from '../../random/distribution.js';
import { sayCell, sayHeadings, type Table, tableReader } from '../file/csv.js';
import type { Finding } from '../types/problem.js';
import { constantTime, namedForms, plainForms, TIME_WANTED, timeError } from './forms.js';
import { keys, name } from './keys.js';
import { nearest } from './nearest.js';
import { LONGEST_MIN, type TimeUnit, toMinutes } from './quantity.js';
import { remembered } from './raw.js';
import { word } from './scalars.js';

/** Minutes, or what is wrong: with `source` in the CSV file, else with the scenario's own words about it. */
export interface Observed {
  readonly values: readonly number[];
  readonly fault: Omit<Finding, 'path'> | undefined;
}
export type ReadObserved = (file: string, column: string, unit: TimeUnit) => Observed;

/**
 * Reads one column of times from CSV text with a heading line (RFC 4180; a byte order mark is skipped).
 * `readFile` gets the path as the planner wrote it and may throw. Each column is read once.
 */
export function observedReader(readFile: (relativePath: string) => string): ReadObserved {
  const known = new Map<string, Observed>(),
    readTable = tableReader(readFile, 'time');
  return (file, column, unit) =>
    remembered(known, JSON.stringify([file, column, unit]), () => readColumn(readTable(file), column, unit));
}

function readColumn(table: Table, column: string, unit: TimeUnit): Observed {
  if (table.fault !== undefined) return { values: [], fault: table.fault };
  const at = (line: number, wanted: string, seen: string | undefined, suggestion?: string): Observed => ({
    values: [],
    fault: { wanted, seen, suggestion, source: { file: table.file, line, column: 1 } },
  });
  const index = table.headings.indexOf(column);
  if (index < 0) {
    const near = nearest(column, table.headings),
      seen = sayHeadings(table.headings, near !== undefined);
    return at(table.line, `a column with the heading "${column}"`, seen, near);
  }

  const values: number[] = [];
  for (const { cells, line } of table.rows) {
    const cell = cells[index] ?? '';
    const value = cell === '' ? NaN : toMinutes(Number(cell), unit);
    if (!(value >= 0 && value <= LONGEST_MIN))
      return at(line, `a number in column "${column}", not negative, with a decimal point`, sayCell(cell));
    values.push(value);
  }
  return { values, fault: undefined };
}

/**
 * The schema of a random time, giving its distribution in minutes; observed times are read by `readObserved`.
 */
export function timeSchema(readObserved: ReadObserved) {
  const observed = keys(
    {
      observed: name('the name of a CSV file').describe(
        'A CSV file with a heading line, path relative to the folder of the scenario file; all ' +
          'observed times are equally likely. Example: times.csv',
      ),
      column: name('the heading of a column').describe(
        'The heading of the column with the times. Example: minutes',
      ),
      unit: word('s', 'min', 'h', 'days').describe('The unit of the numbers in the column.'),
    },
    'a map with the keys observed, column and unit',
  ).transform((map, context): Distribution => {
    const { values, fault } = readObserved(map.observed, map.column, map.unit);
    if (fault !== undefined)
      context.addIssue({
        code: 'custom',
        message: fault.wanted,
        params: fault,
        path: fault.source === undefined ? ['observed'] : [],
      });
    return { kind: 'empirical', values };
  });
  // Exclusive, since a plain union would explain a misspelt key by the one form that lacks nothing else.
  return z
    .xor([constantTime, ...plainForms, ...namedForms, observed], { error: timeError })
    .superRefine((distribution, context) => {
      try {
        leastOf(distribution);
      } catch (error) {
        context.addIssue({ code: 'custom', message: error instanceof Error ? error.message : TIME_WANTED });
      }
    })
    .meta({
      id: 'time',
      description:
        'A time: fixed, or drawn anew each time. Write "20 min", { low, likely, high }, { low, high ' +
        '}, { mean, cv }, { mean, sd }, or a form by name.',
    });
}
export type TimeSchema = ReturnType<typeof timeSchema>;
