import { closeSync, fstatSync, openSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import system, { dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import { placeOf } from '../scenario/file/paths.js';
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

/**
 * Reads the files that a scenario names, paths relative to its folder. Only files in this folder, or in a
 * folder of `more`, are opened, wherever links lead: a scenario from somebody else is not to show other files
 * of the planner's. Throws an Error that says in words what stands in the way.
 */
export function filesBeside(scenario: string, more: readonly string[]): (name: string) => string {
  const folder = dirname(scenario),
    allowed = [folder, ...more];
  return (name) => {
    const path = placeOf(scenario, name, system);
    if (!allowed.some((each) => isInside(resolve(each), path))) throw outside();
    let real: string;
    try {
      real = realpathSync(path);
    } catch (error) {
      throw inWords(error);
    }
    if (!allowed.some((each) => isInside(realOf(each), real))) throw outside();
    return readText(real);
  };
}

const outside = (): Error =>
  new Error('outside the folder of the scenario; --include-from DIR allows a folder');

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

function realOf(folder: string): string {
  try {
    return realpathSync(folder);
  } catch {
    return resolve(folder);
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
