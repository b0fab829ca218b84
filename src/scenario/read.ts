import { crossFindings } from './checks.js';
import { tableReader } from './file/csv.js';
import { withIncludes } from './file/include.js';
import { findingsOf } from './file/issues.js';
import { sortProblems } from './file/problem.js';
import { readSource } from './file/source.js';
import { nameFindings } from './names.js';
import { scenarioSchema } from './schema.js';
import type { Finding, Path, Problem } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { observedReader } from './values/time.js';

export type ReadResult =
  | { readonly scenario: Scenario; readonly problems?: undefined }
  | { readonly scenario?: undefined; readonly problems: readonly Problem[] };

/**
 * Reads a scenario file: a scenario without any problem, or all problems that could be found, sorted by line.
 * `file` is for the messages, which name included files beside it. `readFile` is called for included files
 * and for CSV files of observed times and build lists, with paths relative to the folder of the scenario, and
 * may throw. Never throws itself.
 */
export function readScenario(
  text: string,
  file: string,
  readFile: (relativePath: string) => string,
): ReadResult {
  const whole = withIncludes(readSource(text, file), readFile);
  if (whole.value === undefined)
    return { problems: sortProblems([...whole.faults, ...whole.problems], file) };

  const { scenario, findings } = checked(whole.value, readFile);
  const spot = (problem: Problem): string => JSON.stringify([problem.file, problem.path]);
  const faulty = new Set(whole.faults.map(spot));
  const found = findings
    .map(whole.place)
    .filter((problem) => problem.path === '' || !faulty.has(spot(problem)));
  const problems = [...whole.faults, ...whole.problems, ...found];
  if (scenario !== undefined && problems.length === 0)
    return { scenario: { ...scenario, assumptions: whole.assumptions } };
  return { problems: sortProblems(problems, file) };
}

/** Where a key of a scenario stands, `file:line:column`, also in a file that it includes. */
export function spotOf(
  text: string,
  name: string,
  readFile: (relativePath: string) => string,
  path: Path,
): string {
  const { file, line, column } = withIncludes(readSource(text, name), readFile).place({
    path,
    wanted: '',
    atKey: true,
  });
  return `${file}:${line}:${column}`;
}

/**
 * Checks a scenario as data, with all that it includes in it; without a finding the scenario is sound. Its
 * assumptions are none.
 */
export function checked(
  value: unknown,
  readFile: (relativePath: string) => string,
): { readonly scenario: Scenario | undefined; readonly findings: readonly Finding[] } {
  // The schema is used once, so compiling it first would cost more than it saves.
  const result = scenarioSchema(observedReader(readFile), tableReader(readFile, 'unit')).safeParse(value, {
    jitless: true,
  });
  const shape = result.success ? [] : findingsOf(result.error.issues, value);
  const names = nameFindings(value, shape);
  const cross = result.success ? crossFindings(result.data, names.length === 0) : [];
  return { scenario: result.success ? result.data : undefined, findings: [...shape, ...names, ...cross] };
}
