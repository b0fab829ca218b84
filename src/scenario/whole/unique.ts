import { sayPath, saySeen } from '../file/problem.js';
import type { Outline } from '../lookup/outline.js';
import type { Finding, Path } from '../types/problem.js';
import { mapOf, type RawMap } from '../values/raw.js';

/**
 * Steps have a name of their own over all routes, stations over all sites, parts over feeders and supplies;
 * `usual` is no name for an option.
 */
export function repeatedNames(raw: RawMap, outline: Outline): Finding[] {
  const found: Finding[] = [];

  const stations = new Map<string, string>();
  for (const [siteName, site] of Object.entries(mapOf(raw['sites']))) {
    for (const station of Object.keys(mapOf(mapOf(site)['stations']))) {
      const first = stations.get(station);
      if (first === undefined) stations.set(station, siteName);
      else
        found.push({
          path: ['sites', siteName, 'stations', station],
          wanted: 'each station name once over all sites',
          seen: `${saySeen(station)} again, first in site ${first}`,
          first: ['sites', first, 'stations', station],
          atKey: true,
        });
    }
  }

  const steps = new Map<string, Path>();
  for (const { entries } of outline.routes) {
    entries.forEach(({ path, entry: { step } }) => {
      if (typeof step !== 'string') return;
      const first = steps.get(step);
      if (first === undefined) steps.set(step, path);
      else
        found.push({
          path: [...path, 'step'],
          wanted: 'each step name once over all routes',
          seen: `${saySeen(step)} again, first at ${sayPath(first)}`,
          first,
        });
    });
  }

  for (const supply of Object.keys(mapOf(raw['supplies']))) {
    if (Object.hasOwn(mapOf(raw['feeders']), supply))
      found.push({
        path: ['supplies', supply],
        wanted: 'another name than that of a feeder, since steps ask for both by parts',
        seen: saySeen(supply),
        atKey: true,
      });
  }

  for (const option of outline.options?.keys() ?? []) {
    if (option === 'usual')
      found.push({
        path: ['programme', 'options', option],
        wanted: 'another name for the option; usual is the word for the chance where no option matters',
        seen: '"usual"',
        atKey: true,
      });
  }
  return found;
}
