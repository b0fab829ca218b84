import type { Changeable } from './changes/edit.js';
import { checked } from './checked.js';
import { sayPath } from './file/problem.js';
import { withMade } from './made/with-made.js';
import type { Finding } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { once } from './values/raw.js';

/** A scenario as data that needs no file beside it: with it, changed ones can be read anywhere. */
export interface ScenarioData {
  readonly value: unknown;
  /** Texts of the files that it names, such as build lists, by their paths. */
  readonly files: Readonly<Record<string, string>>;
  /** A warm-up that was found, not given, minutes. */
  readonly warmUpMin?: number | undefined;
}

/**
 * The scenario that the data stand for once their value is changed to `value`; undefined where that is not
 * sound, `findings` then say why.
 */
export function scenarioWith(
  { files, warmUpMin }: Omit<ScenarioData, 'value'>,
  value: unknown,
): { readonly scenario: Scenario | undefined; readonly findings: readonly Finding[] } {
  const { scenario: written, findings } = checked(value, reader(files));
  if (written === undefined || findings.length > 0) return { scenario: undefined, findings };
  const { scenario, findings: clashes = [] } = withMade(asWritten({ value, files }, written));
  if (scenario === undefined) return { scenario, findings: clashes };
  return { scenario: warmUpMin === undefined ? scenario : withWarmUp(scenario, warmUpMin), findings };
}

/** One for all that is read with these files. */
const reader = once((files: ScenarioData['files']) => (name: string): string => {
  const text = files[name];
  if (text === undefined) throw new Error('not among the files of the scenario');
  return text;
});

/**
 * A sound scenario as what is changed: as written, with nothing made and without a warm-up that was found, so
 * it is compared with changed ones. Where things stand in its file is not known.
 * @throws RangeError where it is not sound
 */
export function changeableOf({ value, files }: ScenarioData): Changeable {
  const { scenario, findings } = checked(value, reader(files));
  if (scenario === undefined || findings.length > 0)
    throw new RangeError('expected data of a scenario without a problem');
  return asWritten({ value, files }, scenario);
}

const asWritten = ({ value, files }: ScenarioData, scenario: Scenario): Changeable => ({
  ...{ value, scenario, assumptions: [], readFile: reader(files) },
  place: ({ path, ...rest }) => ({
    ...{ file: '', line: 1, column: 1, seen: undefined, suggestion: undefined },
    ...rest,
    path: sayPath(path),
  }),
});

/** The scenario with a warm-up of so many minutes. */
export const withWarmUp = (scenario: Scenario, warmUpMin: number): Scenario => ({
  ...scenario,
  programme: { ...scenario.programme, warmUpMin },
});
