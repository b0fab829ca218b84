import { isRawMap, mapOf } from '../values/raw.js';

/** Where a step stands in a scenario, as files of what-ifs and the section `measured` have it. */
export interface StepPaths {
  /** `route[prime]`, `feeders.doors.route[hang]`. */
  readonly step: string;
  /** Of its work, or of that of one of its passes; null of a step without work. */
  readonly work: string | null;
}

/** The paths of each step of a scenario as data, feeders included; of several with one name the first. */
export function workPaths(value: unknown): ReadonlyMap<string, StepPaths> {
  const paths = new Map<string, StepPaths>();
  const steps = (route: unknown, at: string): void => {
    if (!Array.isArray(route)) return;
    for (const entry of route) {
      const { step, passes, 'side by side': beside } = mapOf(entry);
      if (typeof step === 'string' && !paths.has(step)) {
        const path = `${at}[${step}]`,
          has = (map: unknown): boolean => isRawMap(map) && Object.hasOwn(map, 'work');
        paths.set(step, {
          step: path,
          work: has(passes) ? `${path}.passes.work` : has(entry) ? `${path}.work` : null,
        });
      }
      steps(beside, at);
    }
  };
  const { route, feeders } = mapOf(value);
  steps(route, 'route');
  for (const [name, feeder] of Object.entries(mapOf(feeders)))
    steps(mapOf(feeder)['route'], `feeders.${name}.route`);
  return paths;
}
