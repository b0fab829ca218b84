import { accessSync, constants, existsSync, lstatSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { FolderError, writeFolder } from '../report/folder.js';
import { readText, writing } from './file.js';
import { UsageError } from './usage-error.js';

const OTHER_NAME = 'choose another name with --out';

/** Throws a UsageError now, before a long run, for what `writeFolder` would refuse after it. */
export function checkOut(out: string, replace: boolean): void {
  const target = resolve(out);
  const found = writing(out, () => lstatSync(target, { throwIfNoEntry: false }));
  if (found === undefined) {
    const parent = nearestFolder(target);
    if (!statSync(parent).isDirectory()) throw new UsageError(`expected to be able to write ${out}, got a file where a folder should be`, OTHER_NAME);
    return writing(out, () => accessSync(parent, constants.W_OK));
  }
  if (!found.isDirectory()) throw new UsageError(`expected ${out} to be free for a report folder, but it is a file or a link`, OTHER_NAME);
  if (!replace) throw new UsageError(`expected ${out} not to exist yet, but it does`, `${OTHER_NAME}, or put the new report in its place with --replace`);
  writing(out, () => accessSync(dirname(target), constants.W_OK));
  const entries = writing(out, () => readdirSync(target, { withFileTypes: true }));
  if (!isReport(target)) throw new UsageError(`expected ${out} to be a report folder of rateproof, but it has no results.json that says so`, OTHER_NAME);
  const foreign = entries.find((entry) => !entry.isFile() || !/^[A-Za-z0-9_-]+\.(png|html|csv|json)$/.test(entry.name));
  if (foreign !== undefined) throw new UsageError(`expected ${out} to hold nothing but a report, but it also holds ${foreign.name}`, `move it away, or ${OTHER_NAME}`);
}

/** Writes a report folder, all of it or none of it. */
export function writeReport(out: string, files: ReadonlyMap<string, string | Buffer>, replace: boolean): void {
  try {
    writing(out, () => writeFolder(out, files, { replace }));
  } catch (error) {
    throw error instanceof FolderError ? new UsageError(error.message) : error;
  }
}

function isReport(folder: string): boolean {
  try {
    const results: unknown = JSON.parse(readText(join(folder, 'results.json')));
    return typeof results === 'object' && results !== null && 'format' in results && results.format === 'rateproof results';
  } catch {
    return false;
  }
}

function nearestFolder(path: string): string {
  let folder = dirname(path);
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}
