import type { Scenario, Site } from './scenario.js';

/** The site whose working days the programme is counted in: that of the first station of the unit's route. */
export function releaseSite(scenario: Scenario): Site {
  const first = scenario.route[0];
  const sites = Object.values(scenario.sites);
  const found =
    first === undefined
      ? undefined
      : first.kind === 'lane'
        ? scenario.sites[scenario.lanes[first.lane].from]
        : sites.find((site) => Object.hasOwn(site.stations, first.at));
  const site = found ?? sites[0];
  if (site === undefined) throw new RangeError('sites: expected at least one site, saw none; add one');
  return site;
}
