import { bundleFindings } from './changes/bundle.js';
import { checked } from './checked.js';
import type { ScenarioData } from './data.js';
import { withIncludes } from './file/include.js';
import { sortProblems } from './file/problem.js';
import { readSource } from './file/source.js';
import { leverFindings } from './levers.js';
import type { Finding, Path, Problem } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { mapOf } from './values/raw.js';

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

  const { scenario, findings: inIt } = checked(whole.value, readFile);
  const findings =
    scenario === undefined || inIt.length > 0
      ? inIt
      : [
          ...leverFindings(
            whole.value,
            scenario,
            // Without its levers, which the changed value might lie outside of.
            (changed) => checked({ ...mapOf(changed), levers: {} }, readFile).findings,
          ),
          ...bundleFindings({ ...whole, scenario, readFile }),
        ];
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

/** A scenario file that reads without a problem, as data that needs no other file. */
export function scenarioData(
  text: string,
  file: string,
  readFile: (relativePath: string) => string,
): ScenarioData {
  const { value } = withIncludes(readSource(text, file), readFile),
    files: Record<string, string> = {};
  checked(value, (name) => (files[name] = readFile(name)));
  return { value, files };
}

/** Says where in the files of a scenario a finding stands. */
export const placesIn = (
  text: string,
  name: string,
  readFile: (relativePath: string) => string,
): ((finding: Finding) => Problem) => withIncludes(readSource(text, name), readFile).place;

/** Where a key of a scenario stands, `file:line:column`, also in a file that it includes. */
export function spotOf(
  text: string,
  name: string,
  readFile: (relativePath: string) => string,
  path: Path,
): string {
  const { file, line, column } = placesIn(
    text,
    name,
    readFile,
  )({
    path,
    wanted: '',
    atKey: true,
  });
  return `${file}:${line}:${column}`;
}
