import type { Model } from '../../flow/model/model.js';
import type { Seen } from './seen.js';

/** Shares of the units at a destination (stations, then lanes) that go on to each other one. */
export type Ways = readonly ReadonlyMap<number, number>[];

/** Below so little of a step's units the rest of the route is not followed. */
const LEAST = 0.01;

/**
 * Where units go from each destination, as the visits seen tell: from each of its steps on to the next step
 * elsewhere, a step that only some do (an option, a sample, rework) by the share of those who do it.
 */
export function waysOf(model: Model, seen: Pick<Seen, 'stepVisits' | 'carried'>): Ways {
  const { steps, stations, lanes } = model,
    ways = Array.from({ length: stations.count + lanes.count }, () => new Map<number, number>());
  const placeOf = (step: number): number =>
    steps.station[step] >= 0
      ? steps.station[step]
      : steps.lane[step] >= 0
        ? stations.count + steps.lane[step]
        : -1;
  const passed = (step: number): number =>
    steps.lane[step] >= 0 ? seen.carried[steps.lane[step]] : seen.stepVisits[step];
  const at = new Float64Array(ways.length);
  for (let step = 0; step < steps.count; step++) {
    const from = placeOf(step),
      units = passed(step);
    if (from < 0 || !(units > 0)) continue;
    at[from] += units;
    let left = 1;
    for (
      let next = step + 1;
      next < steps.count && steps.route[next] === steps.route[step] && left > LEAST;
      next++
    ) {
      const to = placeOf(next);
      if (to < 0 || to === from || model.sideBySide.group[next] >= 0) continue;
      const share = left * Math.min(1, passed(next) / units);
      ways[from].set(to, (ways[from].get(to) ?? 0) + units * share);
      left -= share;
    }
  }
  return ways.map((to, from) => new Map([...to].map(([id, units]) => [id, units / at[from]])));
}
