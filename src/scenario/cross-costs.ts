import { own, siteOfStation } from './cross-routes.js';
import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';

/** Prices of what never happens. */
export function costFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  return Object.keys(scenario.costs?.changeovers ?? {}).flatMap((name): Finding[] => {
    const site = siteOf.get(name);
    return site === undefined || own(scenario.sites[site]!.stations, name)?.changeover !== undefined
      ? []
      : [
          {
            path: ['costs', 'changeovers', name],
            wanted: 'a station with a changeover',
            seen: `"${name}", which has none`,
            atKey: true,
          },
        ];
  });
}
