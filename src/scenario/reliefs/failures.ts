import { scaled } from '../../random/distribution.js';
import { stationsOf } from '../lookup/placed.js';
import type { Failure } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import { atStation } from './places.js';
import { type Relief, withEquipment } from './relief.js';

/**
 * Equipment of each station, and what stations share, fails half as often: twice as long between failures.
 */
export function fewerFailures(scenario: Scenario): Relief[] {
  const ofStations = [...stationsOf(scenario)]
    .filter(([, { station }]) => station.failures.length > 0)
    .map(([name, { siteName }]) =>
      atStation('failure', `failures of ${name} half as often`, siteName, name, (station) => ({
        ...station,
        failures: halfAsOften(station.failures),
      })),
    );
  const shared = Object.entries(scenario.sites).flatMap(([site, { equipment }]) =>
    Object.entries(equipment ?? {})
      .filter(([, { failures }]) => failures.length > 0)
      .map(
        ([name]): Relief => ({
          kind: 'failure',
          text: `failures of ${name} (${site}) half as often`,
          of: { kind: 'equipment', name, site },
          change: (from) =>
            withEquipment(from, site, name, (its) => ({ ...its, failures: halfAsOften(its.failures) })),
        }),
      ),
  );
  return [...ofStations, ...shared];
}

const halfAsOften = (failures: readonly Failure[]): Failure[] =>
  failures.map((each) => ({ ...each, every: scaled(each.every, 2) }));
