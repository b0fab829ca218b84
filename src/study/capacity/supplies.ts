import type { Model } from '../../flow/model/model.js';
import { isInKit } from '../../flow/model/steps.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { named } from '../lists.js';
import { sum } from '../statistics/sums.js';
import type { DailyMinutes } from './days.js';
import type { Demand } from './demand.js';
import type { Limit } from './limits.js';
import { meanDraw } from './means.js';
import { spotsOf } from './spots.js';

/**
 * - A rhythm brings its lot every so many days; a list of dates the lots but the last from the first date to
 *   the last, as each has to last until the next. What is in stock at the start is used up once and is no
 *   rate.
 * - Ordered by a level: orders are at most level + safety stock + lot + what can stand and wait for it at one
 *   time, and they come after the mean lead time, lateness included (Little 1961). Without a lead time there
 *   is no limit.
 */
export function supplyLimits(model: Model, scenario: Scenario, asks: Demand, daily: DailyMinutes): Limit[] {
  const { supplies } = model,
    dayMinutes = daily.of(-1);
  return Object.values(scenario.supplies).map(({ order }, id) => {
    const resource = supplies.resource[id],
      partsPer = (parts: number, minutes: number): number =>
        minutes > 0 ? (parts / minutes) * dayMinutes : Infinity;
    const lead =
      meanDraw(model, supplies.leadDraw[id]) +
      supplies.lateChance[id] * meanDraw(model, supplies.lateByDraw[id]);
    const partsPerDay =
      order.kind === 'rhythm'
        ? partsPer(order.lot, order.everyDays * MINUTES_PER_DAY)
        : order.kind === 'reorder'
          ? partsPer(supplies.level[id] + order.lot + mostWaiting(model, resource), lead)
          : listedRate(supplies.planTimes[id], supplies.planLots[id], partsPer);
    return {
      kind: 'supply',
      ...named(model, 'resources', resource),
      visits: asks.taken[resource],
      minutes: 0,
      available: 0,
      most: partsPerDay / asks.taken[resource],
    };
  });
}

function listedRate(
  times: Float64Array,
  lots: Int32Array,
  partsPer: (parts: number, minutes: number) => number,
): number {
  const last = times.length - 1;
  return last < 1 ? Infinity : partsPer(sum(lots.subarray(0, last)), times[last] - times[0]);
}

/**
 * Parts that requests can want at one time: one request a place, or a lot; a full kit for each sub-assembly
 * that can be in the making at once; ahead of a station any number of them.
 */
function mostWaiting(model: Model, resource: number): number {
  const { steps, stations, routes } = model;
  const most = new Map<number, number>();
  let kits = 0;
  for (const { step, row } of spotsOf(model).takersOf[resource]) {
    if (steps.asksAhead[step] === 1) return Infinity;
    if (isInKit(model, step)) {
      const route = steps.route[step];
      kits += steps.needAmount[row] * (routes.own[route] === 1 ? Infinity : routes.target[route]);
      continue;
    }
    const station = steps.station[step],
      requests = stations.lotMost[station] > 0 ? 1 : stations.places[station];
    most.set(station, Math.max(most.get(station) ?? 0, requests * steps.needAmount[row]));
  }
  return kits + sum(most.values());
}
