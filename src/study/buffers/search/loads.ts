import { stationsOf } from '../../../scenario/lookup/placed.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { Spot } from '../spots.js';

/**
 * Units that come or go at once, by spot: a truck's load at the banks of a lane and behind it, the smallest
 * lot at a station; 1: one at a time. Room for a part of a load may bring nothing, or less than nothing where
 * a truck then leaves with a part of one.
 */
export function loadsAt(scenario: Scenario, spots: readonly Spot[]): number[] {
  const { lanes, route } = scenario,
    stations = stationsOf(scenario);
  return spots.map(({ kind, of }) => {
    if (kind !== 'buffer') return lanes[of]?.capacity ?? 1;
    const before = route[route.findIndex((entry) => entry.kind === 'step' && entry.at === of) - 1],
      truck = before?.kind === 'lane' ? lanes[before.lane]?.capacity : undefined;
    return Math.max(truck ?? 1, stations.get(of)?.station.lot?.least ?? 1);
  });
}
