import { createRequire } from 'node:module';
import type { Info } from 'csv-parse/sync';
import { LONGEST_MIN, toMinutes, type TimeUnit } from './quantity.js';
import { nearest } from './names-nearest.js';
import { saySeen, type Finding } from './problem.js';

/** Minutes, or what is wrong: with `source` in the CSV file, else with the scenario's own words about it. */
export interface Observed {
  readonly values: readonly number[];
  readonly fault: Omit<Finding, 'path'> | undefined;
}
export type ReadObserved = (file: string, column: string, unit: TimeUnit) => Observed;

const MOST_ROWS = 1_000_000;
/** Loaded when the first file is read: most scenarios have none, and a check should start at once. */
const loadCsvParser = (): typeof import('csv-parse/sync') => createRequire(import.meta.url)('csv-parse/sync') as typeof import('csv-parse/sync');
type Row = { readonly record: readonly string[]; readonly info: Pick<Info, 'lines'> };

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

function readColumn(readFile: (path: string) => string, file: string, column: string, unit: TimeUnit): Observed {
  const wrong = (fault: Observed['fault']): Observed => ({ values: [], fault });
  let text: string;
  try {
    text = readFile(file);
  } catch (error) {
    return wrong({ wanted: `a CSV file that can be read (${error instanceof Error ? error.message : String(error)})`, seen: saySeen(file) });
  }
  const at = (line: number, wanted: string, seen: string | undefined, suggestion?: string): Observed =>
    wrong({ wanted, seen, suggestion, source: { file, line, column: 1 } });

  let rows: Row[];
  try {
    rows = loadCsvParser().parse(text, { bom: true, info: true, trim: true, skip_empty_lines: true, to: MOST_ROWS + 1 }) as unknown as Row[];
  } catch (error) {
    const line = (error as { lines?: unknown }).lines;
    return at(typeof line === 'number' ? line : 1, `valid CSV (${error instanceof Error ? error.message.replace(/\.$/, '').toLowerCase() : String(error)})`, undefined);
  }
  const [heading, ...body] = rows;
  if (heading === undefined) return at(1, 'a heading line and at least one time', 'an empty file');
  const index = heading.record.indexOf(column);
  if (index < 0) return at(heading.info.lines, `a column with the heading "${column}"`, `the headings ${heading.record.join(', ')}`, nearest(column, heading.record));
  if (body.length === 0) return at(heading.info.lines, 'at least one time below the heading', 'none');

  const values: number[] = [];
  for (const { record, info } of body) {
    const cell = record[index] ?? '';
    const value = cell === '' ? NaN : toMinutes(Number(cell), unit);
    if (!(value >= 0 && value <= LONGEST_MIN)) return at(info.lines, `a number in column "${column}", not negative, with a decimal point`, saySeen(cell));
    values.push(value);
  }
  return { values, fault: undefined };
}
