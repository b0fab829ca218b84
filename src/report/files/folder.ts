import { randomBytes } from 'node:crypto';
import { lstatSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** What a report folder may hold; anything else in it is somebody's own and is never removed. */
const REPORT_FILE = /^[A-Za-z0-9_-]+\.(png|html|csv|json)$/;
const RESULTS_FILE = 'results.json',
  RESULTS_FORMAT = 'rateproof results';
const OTHER_NAME = 'choose another name with --out';

/** A folder that may not be written: the user's to solve, unlike a fault of the disk. */
export class FolderError extends Error {
  /** `remedy` is what to try. */
  constructor(
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

export interface FolderOptions {
  /**
   * Put the new folder in the place of an existing report folder, which is removed once the new one is
   * complete.
   */
  readonly replace?: boolean;
}

/**
 * Writes all files into a new folder `dir`, or none: they go to a folder beside it with a temporary name,
 * which is then renamed. Parent folders are made. An existing `dir` throws a FolderError, unless `replace` is
 * set and it holds a report and nothing else.
 */
export function writeFolder(
  dir: string,
  files: ReadonlyMap<string, string | Buffer>,
  { replace = false }: FolderOptions = {},
): void {
  const target = resolve(dir),
    found = checkFolder(dir, { replace });
  for (const name of files.keys()) {
    if (!REPORT_FILE.test(name))
      throw new RangeError(
        'name of a report file: expected letters, digits, - and _, and .png, .html, .csv or .json, got ' +
          JSON.stringify(name),
      );
  }
  const mark = randomBytes(6).toString('hex');
  const fresh = join(dirname(target), `.${basename(target)}.new-${mark}`),
    old = join(dirname(target), `.${basename(target)}.old-${mark}`);
  mkdirSync(dirname(target), { recursive: true });
  try {
    mkdirSync(fresh);
    for (const [name, content] of files) writeFileSync(join(fresh, name), content);
    if (found === 'nothing') renameSync(fresh, target);
    else swap(fresh, target, old);
  } catch (error) {
    rmSync(fresh, { recursive: true, force: true });
    throw error;
  }
  rmSync(old, { recursive: true, force: true });
}

/**
 * Between the two renames `target` is missing for a moment; if the second fails, the old folder comes back.
 */
function swap(fresh: string, target: string, old: string): void {
  renameSync(target, old);
  try {
    renameSync(fresh, target);
  } catch (error) {
    renameSync(old, target);
    throw error;
  }
}

/**
 * Throws a FolderError now, before a long run, for a folder that `writeFolder` would refuse after it. Tells
 * what is there.
 */
export function checkFolder(dir: string, { replace = false }: FolderOptions = {}): 'nothing' | 'report' {
  const target = resolve(dir),
    found = lstatSync(target, { throwIfNoEntry: false });
  if (found === undefined) return 'nothing';
  if (!found.isDirectory())
    throw new FolderError(
      `${dir}: expected a name free for a report folder, got a file or a link`,
      OTHER_NAME,
    );
  if (!replace)
    throw new FolderError(
      `${dir}: expected a name not taken yet, got an existing folder`,
      `${OTHER_NAME}, or put the new report in its place with --replace`,
    );
  const entries = readdirSync(target, { withFileTypes: true });
  if (!isReport(target))
    throw new FolderError(
      `${dir}: expected a report folder of rateproof, got one without a ${RESULTS_FILE} that says so`,
      `${OTHER_NAME}, or remove it yourself`,
    );
  const foreign = entries.find((entry) => !entry.isFile() || !REPORT_FILE.test(entry.name));
  if (foreign !== undefined)
    throw new FolderError(
      `${dir}: expected nothing but a report, got ${foreign.name} beside it`,
      `move it away, or ${OTHER_NAME}`,
    );
  return 'report';
}

function isReport(target: string): boolean {
  try {
    const file = join(target, RESULTS_FILE),
      results: unknown = lstatSync(file).isFile() ? JSON.parse(readFileSync(file, 'utf8')) : null;
    return (
      typeof results === 'object' &&
      results !== null &&
      'format' in results &&
      results.format === RESULTS_FORMAT
    );
  } catch {
    return false;
  }
}
