import { createRequire } from 'node:module';
import type { Info } from 'csv-parse/sync';
import type { Finding } from '../types/problem.js';
import { SAFE_TEXT, unsafeMark, withPlainLines } from '../values/marks.js';
import { remembered } from '../values/raw.js';
import { pathFrom } from './paths.js';
import { saySeen } from './problem.js';

/** A line of a CSV file below its heading. */
export interface TableRow {
  readonly cells: readonly string[];
  readonly line: number;
}
/**
 * A CSV file with a heading line, or what is wrong: with `source` in the file, else with the scenario's own
 * words about it.
 */
export type Table =
  | {
      /** Its path with forward slashes, however it was written. */
      readonly file: string;
      readonly headings: readonly string[];
      readonly line: number;
      readonly rows: readonly TableRow[];
      readonly fault?: undefined;
    }
  | { readonly fault: Omit<Finding, 'path'> };
export type ReadTable = (file: string) => Table;

const MOST_ROWS = 1_000_000;
/** Loaded when the first file is read: most scenarios have none, and a check should start at once. */
const loadCsvParser = (): typeof import('csv-parse/sync') =>
  createRequire(import.meta.url)('csv-parse/sync') as typeof import('csv-parse/sync');
type Row = { readonly record: readonly string[]; readonly info: Pick<Info, 'lines'> };

/**
 * Reads CSV text with a heading line (RFC 4180; a byte order mark is skipped, cells are trimmed, empty lines
 * left out, lines may end in either way). `readFile` gets the path as the planner wrote it, with forward
 * slashes, and may throw. `rows` says what the lines below the heading hold.
 */
export function readTable(readFile: (relativePath: string) => string, written: string, rows: string): Table {
  const file = pathFrom('.', written);
  let text: string;
  try {
    text = withPlainLines(readFile(file));
  } catch (error) {
    return {
      fault: {
        wanted: `a CSV file that can be read (${error instanceof Error ? error.message : String(error)})`,
        seen: saySeen(written),
      },
    };
  }
  const at = (line: number, wanted: string, seen: string | undefined): Table => ({
    fault: { wanted, seen, source: { file, line, column: 1 } },
  });

  const bad = text.search(/[\ufffd\0]/);
  if (bad >= 0)
    return at(
      text.slice(0, bad).split('\n').length,
      'UTF-8 text; save the file as CSV in UTF-8',
      'a character that is not',
    );
  let lines: Row[];
  try {
    lines = loadCsvParser().parse(text, {
      info: true,
      trim: true,
      skip_empty_lines: true,
      to: MOST_ROWS + 1,
    }) as unknown as Row[];
  } catch (error) {
    const line = (error as { lines?: unknown }).lines,
      // The parser quotes the cell, of a file that may be no table at all.
      why = (error instanceof Error ? error.message : 'no table')
        .replace(/, value is ".*/s, '')
        .replace(/: got ".*" at line/s, ' at line')
        .replace(/\.$/, '')
        .toLowerCase();
    return at(typeof line === 'number' ? line : 1, `valid CSV (${why})`, undefined);
  }
  for (const { record, info } of lines) {
    const mark = record.map((cell) => unsafeMark(cell, true)).find((each) => each !== undefined);
    if (mark !== undefined) return at(info.lines, SAFE_TEXT, mark);
  }
  const [heading, ...body] = lines;
  if (heading === undefined) return at(1, `a heading line and at least one ${rows}`, 'an empty file');
  if (body.length === 0) return at(heading.info.lines, `at least one ${rows} below the heading`, 'none');
  return {
    file,
    headings: heading.record.map(unguarded),
    line: heading.info.lines,
    rows: body.map(({ record, info }) => ({ cells: record.map(unguarded), line: info.lines })),
  };
}

/**
 * A quote before what a spreadsheet would take for a formula is a guard (OWASP, CSV injection; from memory),
 * as our own tables have it, and no part of the text.
 */
const unguarded = (cell: string): string => (/^'[=+\-@]/.test(cell) ? cell.slice(1) : cell);

const LONGEST_CELL = 20,
  MOST_HEADINGS = 6;

/** A cell after "got", cut short: who reads the message may not be allowed to read the file. */
export const sayCell = (cell: string): string =>
  JSON.stringify(cell.length > LONGEST_CELL ? `${cell.slice(0, LONGEST_CELL)}...` : cell);

/** Headings after "got": told where one is near to what is looked for, else only how many. */
export function sayHeadings(headings: readonly string[], isNear: boolean): string {
  if (!isNear) return headings.length === 1 ? 'one other heading' : `${headings.length} other headings`;
  const shown = headings.slice(0, MOST_HEADINGS).map((heading) => heading.slice(0, LONGEST_CELL));
  return `the headings ${shown.join(', ')}${headings.length > MOST_HEADINGS ? ' and more' : ''}`;
}

/** Reads each file once. */
export function tableReader(readFile: (relativePath: string) => string, rows: string): ReadTable {
  const known = new Map<string, Table>();
  return (file) => remembered(known, file, () => readTable(readFile, file, rows));
}
