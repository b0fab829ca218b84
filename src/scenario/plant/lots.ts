import { findsOf, routesOf, stationsOf, stepsOf } from '../lookup/placed.js';
import type { Station } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { spell, whole } from '../values/scalars.js';

/** Units that a station takes together. */
export const lotSchema = keys(
  {
    least: whole(1).default(1).describe('Minimum lot size. Default: 1'),
    most: whole(1).describe('Maximum lot size; no more than the places of the station. Example: 4'),
    'longest wait': spell
      .optional()
      .describe(
        'Longest time the first unit waits before a lot of at least `least` starts. Default: it ' +
          'starts as soon as `least` units are there. Example: 45 min',
      ),
  },
  'a lot: a map with the keys least and most',
).transform(({ least, most, longestWait }): Station['lot'] => ({ least, most, longestWaitMin: longestWait }));

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
  const stations = stationsOf(scenario);
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).flatMap((placed) => {
      const { at } = placed.step;
      if (stations.get(at)?.station.lot === undefined) return [];
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
