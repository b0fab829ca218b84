import { createHash, randomBytes } from 'node:crypto';
import { existsSync, lstatSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { isInUse } from './in-use.js';

/**
 * Folders that are written whole or not at all: they are filled beside their place, as `.name.new-MARK`, and
 * then renamed. A folder that stands there is moved to `.name.old-MARK` before, and removed afterwards. The
 * mark says which process of which machine is at work, so that what a killed one left can be told.
 */

/** What of the system this hangs on; another one in tests. */
export interface System {
  readonly platform: NodeJS.Platform;
  readonly rename: (from: string, to: string) => void;
  /** Waits, in milliseconds. */
  readonly sleep: (ms: number) => void;
  /** Whether a process of this machine runs. */
  readonly isAlive: (pid: number) => boolean;
}

const SYSTEM: System = {
  platform: process.platform,
  rename: renameSync,
  sleep: (ms) => {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
  },
  isAlive: (pid) => {
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      // One of somebody else is alive, though not ours to signal.
      return (error as NodeJS.ErrnoException).code !== 'ESRCH';
    }
  },
};

/** The new folder could not be put in the place of the old one, nor could the old one be put back. */
export class MovedAsideError extends Error {
  /** `at` is where the old folder is now; the next write into its place puts it back. */
  constructor(
    readonly at: string,
    cause: unknown,
  ) {
    super(`the folder that stood there is now ${at}`, { cause });
  }
}

export interface WholeOptions {
  /** A folder that stands there is removed once the new one is complete. */
  readonly replace?: boolean;
  readonly system?: System | undefined;
}

/**
 * Makes the folder `target` of what `fill` writes into the folder that it is given. Parent folders are made.
 * What killed processes left of the same target is removed. Whatever goes wrong, what stood there is kept.
 * @throws MovedAsideError if it could not be kept in its place
 */
export function writeWhole(
  target: string,
  fill: (folder: string) => void,
  { replace = false, system = SYSTEM }: WholeOptions = {},
): void {
  const place = resolve(target),
    mark = `${MACHINE}-${process.pid}-${randomBytes(3).toString('hex')}`,
    [fresh, old] = (['new', 'old'] as const).map((kind) => beside(place, kind, mark)) as [string, string];
  mkdirSync(dirname(place), { recursive: true });
  sweep(place, system);
  try {
    mkdirSync(fresh);
    fill(fresh);
    if (replace && existsSync(place)) swap(fresh, place, old, system);
    else renamed(fresh, place, system);
  } catch (error) {
    // By both of them the next write knows that the old one is to be put back.
    if (!(error instanceof MovedAsideError)) remove(fresh);
    throw error;
  }
  remove(old);
}

/** Between the two renames nothing stands there; if the second fails, the old folder comes back. */
function swap(fresh: string, place: string, old: string, system: System): void {
  renamed(place, old, system);
  try {
    renamed(fresh, place, system);
  } catch (error) {
    try {
      renamed(old, place, system);
    } catch {
      throw new MovedAsideError(old, error);
    }
    throw error;
  }
}

/** Virus scanners and indexers hold new files for a moment, on Windows: milliseconds from try to try. */
const WAITS = [20, 50, 100, 200, 400, 800];

function renamed(from: string, to: string, system: System): void {
  for (const wait of [...WAITS, undefined]) {
    try {
      system.rename(from, to);
      return;
    } catch (error) {
      const mayPass = system.platform === 'win32' && isInUse(error, system.platform) && !existsSync(to);
      if (wait === undefined || !mayPass) throw error;
      system.sleep(wait);
    }
  }
}

/**
 * Puts back the folder that a process moved aside before it was killed, with nothing in its place yet. Tells
 * whether there was one.
 */
export function putBack(target: string, system: System = SYSTEM): boolean {
  const place = resolve(target);
  if (lstatSync(place, { throwIfNoEntry: false }) !== undefined) return false;
  const left = leftovers(place, system),
    isNew = new Set(left.filter(({ kind }) => kind === 'new').map(({ mark }) => mark)),
    // Without its new folder it was replaced long ago, and what took its place removed by somebody.
    aside = left.find(({ kind, mark }) => kind === 'old' && isNew.has(mark));
  if (aside === undefined) return false;
  renamed(aside.path, place, system);
  return true;
}

function sweep(place: string, system: System): void {
  const isThere = existsSync(place);
  for (const { kind, path } of leftovers(place, system)) if (kind === 'new' || isThere) remove(path);
}

interface Leftover {
  readonly kind: 'new' | 'old';
  readonly mark: string;
  readonly path: string;
}

/** In a folder that several machines share, nobody can tell whether the process of another is alive. */
const MACHINE = createHash('sha256').update(hostname()).digest('hex').slice(0, 6),
  LONGEST_MS = 24 * 3_600_000;
/** Up to version 0.5.0 the mark was chance alone. */
const LEFTOVER = /^(new|old)-((?:([\da-f]{6})-(\d{1,10})-)?[\da-f]{6,12})$/;

const beside = (place: string, kind: Leftover['kind'], mark: string): string =>
  join(dirname(place), `.${basename(place)}.${kind}-${mark}`);

/** What was left beside a place by processes that no longer run. */
function leftovers(place: string, { isAlive }: System): Leftover[] {
  const head = `.${basename(place)}.`;
  return namesIn(dirname(place))
    .filter((name) => name.startsWith(head))
    .flatMap((name) => {
      const [, kind, mark = '', machine, pid] = LEFTOVER.exec(name.slice(head.length)) ?? [];
      if (kind !== 'new' && kind !== 'old') return [];
      const path = join(dirname(place), name),
        // Moving a folder aside does not touch its time, filling one does.
        filled = touched(beside(place, 'new', mark)) ?? touched(path) ?? 0,
        isEnded = machine === MACHINE && (Number(pid) === process.pid || !isAlive(Number(pid)));
      return isEnded || Date.now() - filled > LONGEST_MS ? [{ kind, mark, path }] : [];
    });
}

const touched = (path: string): number | undefined => lstatSync(path, { throwIfNoEntry: false })?.mtimeMs;

/** None where it cannot be read: leftovers must not keep anybody from writing. */
function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** What cannot be removed, since another program has it open, is left to the next write. */
function remove(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true, maxRetries: 3, retryDelay: 50 });
  } catch {
    // Left.
  }
}
