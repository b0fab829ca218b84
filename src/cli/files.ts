import { closeSync, fstatSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { isInUse } from '../study/run/in-use.js';
import { systemReason, UsageError } from './usage-error.js';

/** Bytes; far above any scenario or list of observed times. */
const LARGEST = 64 * 1024 * 1024;

/** The text of a file, which may be a pipe. Throws an Error that says in words what stands in the way. */
export function readText(path: string): string {
  let handle: number;
  try {
    handle = openSync(path, 'r');
  } catch (error) {
    throw inWords(error);
  }
  try {
    const stat = fstatSync(handle);
    if (stat.isDirectory()) throw new Error('a folder');
    if (!stat.isFile() && !stat.isFIFO()) throw new Error('a device');
    if (stat.size > LARGEST) throw new Error(`more than ${LARGEST / 1024 / 1024} MB`);
    return readFileSync(handle, 'utf8');
  } catch (error) {
    throw inWords(error);
  } finally {
    closeSync(handle);
  }
}

function inWords(error: unknown): unknown {
  const reason = systemReason(error);
  return reason === undefined ? error : new Error(reason, { cause: error });
}

/** Does what writes to `path`; an error of the operating system becomes a UsageError. */
export function writing<T>(path: string, write: () => T, platform: NodeJS.Platform = process.platform): T {
  try {
    return write();
  } catch (error) {
    const reason = systemReason(error, platform);
    if (reason === undefined) throw error;
    throw new UsageError(
      `expected to be able to write ${path}, got ${reason}`,
      isInUse(error, platform)
        ? 'close what has it open and give the same command again, or choose another place with --out; ' +
            'what stood there is as it was'
        : 'choose another place with --out',
    );
  }
}

export function writeFile(path: string, content: string | Buffer): void {
  writing(path, () => {
    writeFileSync(path, content);
  });
}
