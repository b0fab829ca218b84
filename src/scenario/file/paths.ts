import { type PlatformPath, posix, win32 } from 'node:path';

/**
 * Paths in scenario files are written with forward slashes, and mean the same on every system; a backslash is
 * one too, since that is how Windows shows a path. A path with a drive or a server in front is one of
 * Windows.
 */
const slashed = (path: string): string => path.replaceAll('\\', '/');
const DRIVE = /^[A-Za-z]:/,
  SERVER = /^\/\/[^/]/;
const isOfWindows = (path: string): boolean => DRIVE.test(path) || SERVER.test(path);

/** The path of a file named in a file of this folder, seen from the folder of the scenario. */
export function pathFrom(folder: string, name: string): string {
  const path = slashed(name);
  if (posix.isAbsolute(path) || isOfWindows(path)) return path;
  // Joined as Windows does it: the others make one slash of the two in front of a server.
  return isOfWindows(folder) ? slashed(win32.join(folder, path)) : posix.join(folder, path);
}

/** A path of this system as messages show it, with forward slashes. */
export const shownPath = (path: string, { sep }: Pick<PlatformPath, 'sep'>): string =>
  sep === '\\' ? slashed(path) : path;

/**
 * Where a file lies on this system that a scenario names: absolute, by its path from the folder of the
 * scenario. Throws an Error with what is wrong for a path that this system cannot have.
 * @param system `path.win32` or `path.posix`
 */
export function placeOf(scenario: string, name: string, system: PlatformPath): string {
  const path = slashed(name);
  if (system.sep === '/' && isOfWindows(path)) throw new Error('a path of Windows, which this system is not');
  if (DRIVE.test(path) && path[2] !== '/')
    throw new Error('a drive with no slash behind it, which means another folder from time to time');
  return system.resolve(system.dirname(scenario), path);
}
