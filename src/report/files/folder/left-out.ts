import type { LogTold } from '../../../records/log-told.js';
import { type FileTable, fileTable } from './csv.js';

/** The rows of a log that are not used; null where all are. */
export const leftOutRows = ({ leftOut }: LogTold): FileTable | null =>
  leftOut.length === 0
    ? null
    : fileTable(leftOut, [
        ['line', 'line', 'count'],
        ['why', 'why'],
        ['says', 'says'],
      ]);
