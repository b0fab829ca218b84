import type { Finding } from '../types/problem.js';
import { findsOf, own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';

import type { Scenario } from '../types/scenario.js';

/** Lots above the places of their station, or that would have to be repaired: a lot is worked on as one. */
export function lotFindings(scenario: Scenario): Finding[] {
  return [...sizes(scenario), ...repairs(scenario)];
}

function sizes(scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  for (const [site, { stations }] of Object.entries(scenario.sites)) {
    for (const [name, { lot, places }] of Object.entries(stations)) {
      if (lot === undefined) continue;
      const path = ['sites', site, 'stations', name, 'lot'];
      if (lot.most > places)
        found.push({
          path: [...path, 'most'],
          wanted: `at most ${places}, the places of the station`,
          seen: String(lot.most),
        });
      if (lot.least > lot.most)
        found.push({
          path: [...path, 'least'],
          wanted: `at most ${lot.most}, the most of the lot`,
          seen: String(lot.least),
        });
    }
  }
  return found;
}

function repairs(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).flatMap((placed) => {
      const { at } = placed.step,
        site = siteOf.get(at);
      if (site === undefined || own(scenario.sites[site]!.stations, at)?.lot === undefined) return [];
      return findsOf(placed)
        .filter(({ find }) => find.then.kind === 'repair')
        .map(
          ({ path }): Finding => ({
            path: [...path, 'repair'],
            wanted: `no repair at "${at}", which works on lots; give the inspection a station of its own`,
            atKey: true,
          }),
        );
    }),
  );
}
