import { scaled } from '../../random/distribution.js';
import { stationsOf } from '../lookup/placed.js';
import type { Scenario } from '../types/scenario.js';
import { atStation } from './places.js';
import type { Relief } from './relief.js';

/** Equipment of each station fails half as often: twice as long between failures. */
export function fewerFailures(scenario: Scenario): Relief[] {
  return [...stationsOf(scenario)]
    .filter(([, { station }]) => station.failures.length > 0)
    .map(([name, { siteName }]) =>
      atStation('failure', `failures of ${name} half as often`, siteName, name, (station) => ({
        ...station,
        failures: station.failures.map((each) => ({ ...each, every: scaled(each.every, 2) })),
      })),
    );
}
