import system from 'node:path';
import type { Model } from '../flow/model/model.js';
import { compile } from '../scenario/compile.js';
import { type ScenarioData, withWarmUp } from '../scenario/data.js';
import { shownPath } from '../scenario/file/paths.js';
import { sayProblem } from '../scenario/file/problem.js';
import { readScenario, scenarioData, spotsIn } from '../scenario/read.js';
import type { Path, Problem } from '../scenario/types/problem.js';
import type { Scenario } from '../scenario/types/scenario.js';
import type { RunRequest } from './arguments/options.js';
import { filesBeside, readText } from './files.js';
import { inFront } from './front/in-front.js';
import type { Interrupt } from './interrupt.js';
import { progressOf } from './output.js';
import { UsageError } from './usage-error.js';

export interface Loaded {
  readonly scenario: Scenario;
  readonly model: Model;
  /** The name of the file without its folder, so that results are the same wherever it lies. */
  readonly file: string;
}

const MOST_PROBLEMS = 50;

/** The path of a file as messages show it. */
export const inMessages = (path: string): string => shownPath(path, system);

/** A scenario file as it was read: a pipe cannot be read again. */
export interface ReadFile {
  readonly text: string;
  /** Reads what it names. */
  readonly readFile: (name: string) => string;
}
const known = new Map<string, ReadFile>();

/** The file of a scenario that was loaded. */
export function readBefore(path: string): ReadFile {
  const read = known.get(path);
  if (read === undefined) throw new Error(`expected a scenario that was loaded, got ${path}`);
  return read;
}

/**
 * Reads and compiles a scenario file; the files that it names are looked for beside it, and in folders of
 * `includeFrom`. A UsageError tells all its problems.
 */
export function loadScenario(path: string, includeFrom: readonly string[]): Loaded {
  inFront().tell({ kind: 'busy', args: [`reading ${path}`] });
  const text = readInput(path, 'a scenario file'),
    readFile = filesBeside(path, includeFrom),
    { scenario, problems } = readScenario(text, inMessages(path), readFile);
  known.set(path, { text, readFile });
  if (scenario === undefined)
    throw problemsError(
      path,
      problems,
      'docs/scenario.md lists every key; `rateproof schema` lets an editor check while you write',
    );
  inFront().tell({ kind: 'asked', units: scenario.programme.quantity ?? 0 });
  return { scenario, file: system.basename(path), model: planned(path, () => compile(scenario)) };
}

/**
 * A scenario to be run. A warm-up that it leaves to be found is found first, and `warmed` gives it to changed
 * scenarios too.
 */
export async function loadToRun(
  request: RunRequest,
  interrupt: Interrupt,
): Promise<Loaded & { readonly warmed: (scenario: Scenario) => Scenario }> {
  const { file: path, includeFrom, seed, workers, quiet, anyway } = request;
  // They load the engine while this thread reads.
  const { startThreads } = await import('../study/run/threads.js');
  if (request.through.length === 0) startThreads(workers);
  const loaded = loadScenario(path, includeFrom),
    { scenario, file } = loaded;
  if (scenario.programme.findsWarmUp === undefined) return { ...loaded, warmed: (each) => each };
  // Loads the engine and the threads, which `check` does not need.
  const { findWarmUp } = await import('../study/simulate/found-warm-up.js');
  progressOf(quiet, anyway).stage(`looking for the warm-up of ${file} by MSER-5, seed ${seed}`);
  const { throughOf } = await import('./through.js');
  const through = await throughOf(request),
    { signal } = interrupt;
  const minutes = await interrupt.orStop(
    plannedRun(path, () => findWarmUp({ scenario, seed, workers, through, signal })),
  );
  const warmed = (each: Scenario): Scenario => withWarmUp(each, minutes),
    found = warmed(scenario);
  return { file, scenario: found, model: planned(path, () => compile(found)), warmed };
}

/** A scenario that was loaded, as data. */
export function dataOf(path: string, { programme }: Scenario): ScenarioData {
  const { text, readFile } = readBefore(path),
    data = scenarioData(text, inMessages(path), readFile);
  return programme.findsWarmUp === undefined ? data : { ...data, warmUpMin: programme.warmUpMin };
}

/** The same where it has guesses or estimates, which can be varied only so. */
export const dataToVary = (path: string, scenario: Scenario): ScenarioData | undefined =>
  scenario.assumptions.some(({ basis }) => basis !== 'measured') ? dataOf(path, scenario) : undefined;

/** The text of a file that the command line names. */
export function readInput(path: string, what: string): string {
  try {
    return readText(path);
  } catch (error) {
    throw new UsageError(
      `expected ${what} that can be read, got ${(error as Error).message}: ${path}`,
      'give the path of a YAML file',
    );
  }
}

/** How a file of changes of a scenario is read. */
type ReadChanges<Found> = (
  text: string,
  file: string,
  base: { readonly text: string; readonly file: string },
  readFile: ReadFile['readFile'],
) => Found;

/**
 * Reads changes of a scenario that was loaded without a problem. A UsageError tells all problems.
 * @param page of the docs that shows how they are written
 */
export function loadChanges<Found extends { readonly problems?: readonly Problem[] | undefined }>(
  path: string,
  scenarioPath: string,
  [what, page]: readonly [what: string, page: string],
  read: ReadChanges<Found>,
): Found {
  const text = readInput(path, what),
    base = readBefore(scenarioPath),
    found = read(text, inMessages(path), { text: base.text, file: inMessages(scenarioPath) }, base.readFile);
  if (found.problems !== undefined)
    throw problemsError(path, found.problems, `${page} shows how changes are written`);
  return found;
}

/** All problems of a file, as an error of the user. */
export function problemsError(path: string, problems: readonly Problem[], hint: string): UsageError {
  const lines = problems.slice(0, MOST_PROBLEMS).map(sayProblem);
  if (problems.length > MOST_PROBLEMS) lines.push(`and ${problems.length - MOST_PROBLEMS} more`);
  return new UsageError(
    `${problems.length === 1 ? '1 problem' : `${problems.length} problems`} in ${path}; nothing was run`,
    hint,
    lines,
  );
}

/**
 * What only planning can tell, such as a programme that never ends, is said as `path: expected ...` in a
 * RangeError.
 */
export function planned<T>(path: string, plan: () => T): T {
  try {
    return plan();
  } catch (error) {
    throw ofUser(path, error);
  }
}

/** The same of a plan that is made while a study runs. */
export async function plannedRun<T>(path: string, run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    throw ofUser(path, error);
  }
}

function ofUser(path: string, error: unknown): unknown {
  if (!(error instanceof RangeError)) return error;
  const key = /^(\S+): expected /.exec(error.message)?.[1];
  return key === undefined ? error : new UsageError(`${lineOf(path, key)} ${error.message}`);
}

/** Where a key of a scenario that was loaded stands, `file:line:column`. */
export const lineOf = (path: string, key: string): string => linesIn(path)([key]);

/** The same of any number of keys. */
export function linesIn(path: string): (key: Path) => string {
  const read = known.get(path);
  return read === undefined ? () => `${path}:` : spotsIn(read.text, inMessages(path), read.readFile);
}
