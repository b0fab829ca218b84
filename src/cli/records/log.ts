import { createReadStream, statSync } from 'node:fs';
import type { Known, LogRead } from '../../records/log/cleaned.js';
import type { FloorEvent } from '../../records/log/event.js';
import { readAnyLog } from '../../records/read-any.js';
import { systemReason, UsageError } from '../usage-error.js';
import { readable } from './table-file.js';

/** Bytes that are read at once. */
const AT_ONCE = 1 << 18;

/**
 * Reads the floor log that the command line names.
 * @param take gets the events in batches
 * @param progress is told the share of the file that is read, 0..1, and the rows
 */
export async function readLogFile(
  path: string,
  known: Known,
  take: (events: readonly FloorEvent[]) => void,
  progress?: (share: number, rows: number) => void,
): Promise<LogRead> {
  try {
    const stat = statSync(path);
    if (!stat.isFile())
      throw notRead(path, stat.isDirectory() ? 'a folder' : 'a pipe or device, which is read twice');
    return await readable(path, () =>
      readAnyLog(
        () => createReadStream(path, { highWaterMark: AT_ONCE }),
        known,
        take,
        (bytes, rows) => progress?.(Math.min(1, bytes / stat.size), rows),
      ),
    );
  } catch (error) {
    const reason = systemReason(error);
    throw reason === undefined ? error : notRead(path, reason);
  }
}

const notRead = (path: string, got: string): UsageError =>
  new UsageError(
    `expected a floor log that can be read, got ${got}: ${path}`,
    'give the path of a CSV file, or of OCEL 2.0 in JSON; docs/floor-log.md shows both',
  );
