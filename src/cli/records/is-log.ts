import { closeSync, openSync, readSync } from 'node:fs';
import { isLogHead } from '../../records/log/columns.js';
import { tableLines } from '../../records/table/table.js';
import { Unreadable } from '../../records/unreadable.js';

/** Bytes of the beginning of a file: more than any head has. */
const BEGINNING = 1 << 16;

/** Whether a file is a floor log, OCEL 2.0 or CSV by its head; no where it cannot be read. */
export function isLogFile(path: string): boolean {
  try {
    const bytes = beginningOf(path),
      // What is JSON begins with a brace, behind a mark and spaces.
      isJson = /^\uFEFF?\s*\{/.test(bytes.toString('utf8', 0, 100));
    return isJson || isLogHead(tableLines(bytes)[0]?.cells ?? []);
  } catch (error) {
    // Whoever reads all of it says what is wrong.
    if (error instanceof Unreadable || (error instanceof Error && 'code' in error)) return false;
    throw error;
  }
}

function beginningOf(path: string): Buffer {
  const file = openSync(path, 'r');
  try {
    const bytes = Buffer.alloc(BEGINNING);
    return bytes.subarray(0, readSync(file, bytes, 0, BEGINNING, 0));
  } finally {
    closeSync(file);
  }
}
