import { isRawMap, mapOf } from '../values/raw.js';

/**
 * Of each step of a scenario as data, feeders included, the path of its work, as files of what-ifs and the
 * section `measured` have it; null of a step without one.
 */
export function workPaths(value: unknown): ReadonlyMap<string, string | null> {
  const paths = new Map<string, string | null>();
  const steps = (route: unknown, at: string): void => {
    if (!Array.isArray(route)) return;
    for (const entry of route) {
      const { step, 'side by side': beside } = mapOf(entry);
      if (typeof step === 'string' && !paths.has(step))
        paths.set(step, isRawMap(entry) && Object.hasOwn(entry, 'work') ? `${at}[${step}].work` : null);
      steps(beside, at);
    }
  };
  const { route, feeders } = mapOf(value);
  steps(route, 'route');
  for (const [name, feeder] of Object.entries(mapOf(feeders)))
    steps(mapOf(feeder)['route'], `feeders.${name}.route`);
  return paths;
}
