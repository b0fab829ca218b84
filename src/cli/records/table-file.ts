import { readFileSync, statSync } from 'node:fs';
import { type TableLine, tableLines } from '../../records/table/table.js';
import { Unreadable } from '../../records/unreadable.js';
import { systemReason, UsageError } from '../usage-error.js';

/** Bytes; a table of times has a few thousand rows. */
const LARGEST = 64 * 1024 * 1024;
/** Rows of a sheet at most. */
const MOST_ROWS = 1_000_000;
/** Times of day are dates of this year in a workbook. */
const CLOCK_FROM = Date.UTC(1899, 11, 30),
  CLOCK_TO = Date.UTC(1905, 0, 1);

/** Reads a table of times, CSV or XLSX. A UsageError tells what is wrong with it. */
export async function loadTable(path: string): Promise<readonly TableLine[]> {
  let bytes: Buffer;
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) throw new Error('a folder');
    if (stat.size > LARGEST) throw new Error(`more than ${LARGEST / 1024 / 1024} MB`);
    bytes = readFileSync(path);
  } catch (error) {
    throw new UsageError(
      `expected a table that can be read, got ${systemReason(error) ?? (error as Error).message}: ${path}`,
      'give the path of a CSV or XLSX file',
    );
  }
  const isPacked = bytes[0] === 0x50 && bytes[1] === 0x4b;
  return readable(path, () => (isPacked ? sheetLines(bytes, path) : Promise.resolve(tableLines(bytes))));
}

/** What cannot be read of a table becomes a UsageError with its name. */
export async function readable<T>(path: string, read: () => T | Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    throw new UsageError(`${path}: ${error.message}`, error.remedy);
  }
}

/** The rows of the first sheet. */
async function sheetLines(bytes: Uint8Array, path: string): Promise<TableLine[]> {
  const { readXlsx } = await import('hucre/xlsx');
  let rows: readonly (readonly unknown[])[];
  try {
    const { sheets } = await readXlsx(bytes, { sheets: [0], maxRows: MOST_ROWS });
    rows = sheets[0]?.rows ?? [];
  } catch {
    throw new UsageError(
      `${path}: expected a workbook that can be read, got a damaged one`,
      'save it as CSV',
    );
  }
  return rows
    .map((cells, i) => ({ line: i + 1, cells: cells.map(cellText) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
}

/** Numbers with a point, dates in ISO form, times of day as hours and minutes. */
function cellText(cell: unknown): string {
  if (cell instanceof Date) {
    const at = cell.getTime();
    if (at >= CLOCK_TO) return cell.toISOString().slice(0, 19);
    const seconds = Math.round((at - CLOCK_FROM) / 1000),
      two = (part: number): string => String(part).padStart(2, '0');
    return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  }
  return ['string', 'number', 'boolean'].includes(typeof cell) ? String(cell).trim() : '';
}
