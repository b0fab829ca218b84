import type { Model } from '../../flow/model/model.js';
import { waysBackFrom } from '../capacity/way/ways-back.js';
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
  /** Behind the last route are the ways back. */
  const isNext = (step: number, route: number): boolean =>
    steps.route[step] === route && steps.onTo[step] < 0;
  const at = new Float64Array(ways.length);
  for (let step = 0; step < steps.count; step++) {
    const from = placeOf(step),
      units = passed(step);
    if (from < 0 || !(units > 0)) continue;
    at[from] += units;
    let left = 1;
    /** So many of those left. */
    const go = (to: number, part: number): void => {
      if (to < 0 || to === from) return;
      const share = left * Math.min(1, part);
      ways[from].set(to, (ways[from].get(to) ?? 0) + units * share);
      left -= share;
    };
    if (steps.onTo[step] >= 0) {
      go(placeOf(steps.onTo[step]), 1);
      continue;
    }
    for (const [first] of waysBackFrom(model, step).values()) go(placeOf(first), passed(first) / units);
    for (let next = step + 1; next < steps.count && isNext(next, steps.route[step]) && left > LEAST; next++)
      if (model.sideBySide.group[next] < 0) go(placeOf(next), passed(next) / units);
  }
  return ways.map((to, from) => new Map([...to].map(([id, units]) => [id, units / at[from]])));
}
