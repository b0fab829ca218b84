import { bundleFindings } from './changes/bundle.js';
import type { Changeable } from './changes/edit.js';
import { checked } from './checked.js';
import type { ScenarioData } from './data.js';
import { sortProblems } from './file/problem.js';
import { wholeOf } from './file/whole-of.js';
import { leverFindings } from './levers.js';
import { withMade } from './made/with-made.js';
import { unknownReliefs } from './reliefs/named.js';
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
  const whole = wholeOf(text, file, readFile);
  if (whole.value === undefined)
    return { problems: sortProblems([...whole.faults, ...whole.problems], file) };

  const { scenario: written, findings: inIt } = checked(whole.value, readFile);
  const { scenario = written, findings } =
    written === undefined || inIt.length > 0
      ? { findings: inIt }
      : withWhatItNames({ ...whole, scenario: written, readFile });
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

const NONE = { scenario: undefined, findings: [] };

/**
 * A scenario that is sound as written, with the changes in it that it says are made; and what is wrong with
 * its levers, and with what it names as possible changes.
 */
function withWhatItNames(base: Changeable): {
  readonly scenario?: Scenario | undefined;
  readonly findings: readonly Finding[];
} {
  const ofChanges = [...bundleFindings(base), ...unknownReliefs(base.scenario)],
    { scenario, findings: ofMade = [] } = ofChanges.length > 0 ? NONE : withMade(base);
  const ofLevers = leverFindings(base.value, base.scenario, (changed) => {
    // Without its levers, which the changed value might lie outside of.
    const value = { ...mapOf(changed), levers: {} },
      { scenario: its, findings } = checked(value, base.readFile);
    return its === undefined || findings.length > 0 || scenario === undefined
      ? findings
      : (withMade({ ...base, value, scenario: its }).findings ?? []);
  });
  return { scenario, findings: [...ofLevers, ...ofChanges, ...ofMade] };
}

/** A scenario file that reads without a problem, as data that needs no other file. */
export function scenarioData(
  text: string,
  file: string,
  readFile: (relativePath: string) => string,
): ScenarioData {
  const whole = wholeOf(text, file, readFile),
    { value } = whole,
    files: Record<string, string> = {};
  const read = (name: string): string => (files[name] = readFile(name)),
    { scenario } = checked(value, read);
  // Bundles may name files of their own.
  if (scenario !== undefined) Array.from(bundleFindings({ ...whole, scenario, readFile: read }));
  return { value, files };
}

/** Says where in the files of a scenario a finding stands. */
const placesIn = (
  text: string,
  name: string,
  readFile: (relativePath: string) => string,
): ((finding: Finding) => Problem) => wholeOf(text, name, readFile).place;

/** Where keys of a scenario stand, `file:line:column`, also in a file that it includes. */
export function spotsIn(
  text: string,
  name: string,
  readFile: (relativePath: string) => string,
): (path: Path) => string {
  const place = placesIn(text, name, readFile);
  return (path) => {
    const { file, line, column } = place({ path, wanted: '', atKey: true });
    return `${file}:${line}:${column}`;
  };
}
