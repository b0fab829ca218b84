import { workPaths } from '../../scenario/changes/work-paths.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { anyPlace, placesIn, type StepPlace } from '../../study/fit/places.js';
import { dataOf, loadScenario } from '../load.js';

/** The steps of a scenario as a table of times asks for them. */
export interface Places {
  /** Their names; undefined: any will do. */
  readonly steps: readonly string[] | undefined;
  readonly placeOf: (step: string) => StepPlace;
  /** Of the scenario; null without one. */
  readonly digest: string | null;
}

/** Reads the scenario that the command line names; without one each step is taken to be of the main route. */
export function loadPlaces(file: string | undefined, includeFrom: readonly string[]): Places {
  if (file === undefined) return { steps: undefined, placeOf: anyPlace, digest: null };
  return placesOf(file, loadScenario(file, includeFrom).scenario);
}

/** The same of a scenario that is read already. */
export function placesOf(file: string, scenario: Scenario): Places {
  const paths = workPaths(dataOf(file, scenario).value);
  return {
    steps: [...paths.keys()],
    placeOf: placesIn(scenario, paths),
    digest: `sha256:${digest(scenario)}`,
  };
}
