import { workPaths } from '../../scenario/changes/work-paths.js';
import { digest } from '../../scenario/digest.js';
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
  const { scenario } = loadScenario(file, includeFrom),
    paths = workPaths(dataOf(file, scenario).value);
  return {
    steps: [...paths.keys()],
    placeOf: placesIn(scenario, paths),
    digest: `sha256:${digest(scenario)}`,
  };
}
