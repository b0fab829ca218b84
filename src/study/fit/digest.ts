import { createHash } from 'node:crypto';
import type { TableLine } from '../../records/table/table.js';

/** SHA-256 of the rows of a table: files with the same digest give the same results. */
export const rowsDigest = (rows: readonly TableLine[]): string =>
  `sha256:${createHash('sha256').update(JSON.stringify(rows)).digest('hex')}`;
