import { allStations, allSteps, findsOf } from '../lookup/placed.js';
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
export function* lotFindings(scenario: Scenario): Iterable<Finding> {
  for (const { path: here, station } of allStations(scenario)) {
    const { lot, places } = station,
      path = [...here, 'lot'];
    if (lot === undefined) continue;
    if (lot.most > places)
      yield {
        path: [...path, 'most'],
        wanted: `at most ${places}, the places of the station`,
        seen: String(lot.most),
      };
    if (lot.least > lot.most)
      yield {
        path: [...path, 'least'],
        wanted: `at most ${lot.most}, the most of the lot`,
        seen: String(lot.least),
      };
  }
  for (const placed of allSteps(scenario)) {
    if (placed.where?.station.lot === undefined) continue;
    for (const { path, find } of findsOf(placed))
      if (find.then.kind === 'repair')
        yield {
          path: [...path, 'repair'],
          wanted:
            `no repair at "${placed.step.at}", which works on lots; give the inspection a station of ` +
            'its own',
          atKey: true,
        };
  }
}
