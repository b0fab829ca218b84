import { readTable } from '../file/csv.js';
import { saySeen } from '../file/problem.js';
import type { Finding } from '../types/problem.js';
import { nearest } from './nearest.js';
import { LONGEST_MIN, type TimeUnit, toMinutes } from './quantity.js';

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
  const known = new Map<string, Observed>();
  return (file, column, unit) => {
    const key = JSON.stringify([file, column, unit]);
    const before = known.get(key);
    if (before !== undefined) return before;
    const observed = readColumn(readFile, file, column, unit);
    known.set(key, observed);
    return observed;
  };
}

function readColumn(
  readFile: (path: string) => string,
  file: string,
  column: string,
  unit: TimeUnit,
): Observed {
  const table = readTable(readFile, file, 'time');
  if (table.fault !== undefined) return { values: [], fault: table.fault };
  const at = (line: number, wanted: string, seen: string | undefined, suggestion?: string): Observed => ({
    values: [],
    fault: { wanted, seen, suggestion, source: { file, line, column: 1 } },
  });
  const index = table.headings.indexOf(column);
  if (index < 0)
    return at(
      table.line,
      `a column with the heading "${column}"`,
      `the headings ${table.headings.join(', ')}`,
      nearest(column, table.headings),
    );

  const values: number[] = [];
  for (const { cells, line } of table.rows) {
    const cell = cells[index] ?? '';
    const value = cell === '' ? NaN : toMinutes(Number(cell), unit);
    if (!(value >= 0 && value <= LONGEST_MIN))
      return at(line, `a number in column "${column}", not negative, with a decimal point`, saySeen(cell));
    values.push(value);
  }
  return { values, fault: undefined };
}
