import { lstatSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { MovedAsideError, putBack, type System, writeWhole } from '../../../study/run/whole-folder.js';

/** What a report folder may hold; anything else in it is somebody's own and is never removed. */
const REPORT_FILE =
  /^([A-Za-z0-9_-]+\.(png|svg|html|csv|json|xlsx)|(plan|steps)-reached\.yaml|fitted\.yaml)$/;
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
  readonly system?: System | undefined;
}

/**
 * Writes all files into a new folder `dir`, or none. Parent folders are made. An existing `dir` throws a
 * FolderError, unless `replace` is set and it holds a report and nothing else.
 */
export function writeFolder(
  dir: string,
  files: ReadonlyMap<string, string | Buffer>,
  { replace = false, system }: FolderOptions = {},
): void {
  const found = checkFolder(dir, { replace, system });
  for (const name of files.keys()) {
    if (!REPORT_FILE.test(name))
      throw new RangeError(
        'name of a report file: expected letters, digits, - and _, and .png, .svg, .html, .csv, .json or ' +
          `.xlsx, got ${JSON.stringify(name)}`,
      );
  }
  const fill = (folder: string): void => {
    for (const [name, content] of files) writeFileSync(join(folder, name), content);
  };
  try {
    writeWhole(dir, fill, { replace: found === 'report', system });
  } catch (error) {
    if (!(error instanceof MovedAsideError)) throw error;
    throw new FolderError(
      `${dir}: expected to be able to put the new report there, got a folder that is in use; ` +
        `the report that stood there is now ${error.at}`,
      'close what has it open and give the same command again, which puts it back first',
    );
  }
}

/**
 * Throws a FolderError now, before a long run, for a folder that `writeFolder` would refuse after it. Tells
 * what is there. A report that a killed run had moved aside is put back before.
 */
export function checkFolder(
  dir: string,
  { replace = false, system }: FolderOptions = {},
): 'nothing' | 'report' {
  const isBack = putBack(dir, system),
    target = resolve(dir),
    found = lstatSync(target, { throwIfNoEntry: false });
  if (found === undefined) return 'nothing';
  if (!found.isDirectory())
    throw new FolderError(
      `${dir}: expected a name free for a report folder, got a file or a link`,
      OTHER_NAME,
    );
  if (!replace)
    throw new FolderError(
      `${dir}: expected a name not taken yet, got an existing folder` +
        (isBack ? ', which a run that was killed had moved aside and which is back in its place' : ''),
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
