import { accessSync, constants, existsSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { checkFolder, FolderError, writeFolder } from '../report/files/folder/folder.js';
import type { System } from '../study/run/whole-folder.js';
import { writing } from './files.js';
import { UsageError } from './usage-error.js';

/** Throws a UsageError now, before a long run, for what `writeReport` would refuse after it. */
export function checkOut(out: string, replace: boolean): void {
  allowed(out, () => {
    checkFolder(out, { replace });
    const parent = nearestFolder(resolve(out));
    if (!statSync(parent).isDirectory())
      throw new FolderError(
        `expected to be able to write ${out}, got a file where a folder should be`,
        'choose another name with --out',
      );
    accessSync(parent, constants.W_OK);
  });
}

/** Writes a report folder, all of it or none of it. `system` is another one in tests. */
export function writeReport(
  out: string,
  files: ReadonlyMap<string, string | Buffer>,
  replace: boolean,
  system?: System,
): void {
  allowed(
    out,
    () => {
      writeFolder(out, files, { replace, system });
    },
    system?.platform,
  );
}

function allowed(out: string, work: () => void, platform?: NodeJS.Platform): void {
  try {
    writing(out, work, platform);
  } catch (error) {
    throw error instanceof FolderError ? new UsageError(error.message, error.remedy) : error;
  }
}

function nearestFolder(path: string): string {
  let folder = dirname(path);
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}
