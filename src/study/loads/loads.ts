import type { Model } from '../../flow/model/model.js';
import { capacity } from '../capacity/capacity.js';
import { dailyMinutes } from '../capacity/days.js';
import { type Demand, demand } from '../capacity/demand.js';
import { cumulated, type Planned } from '../sample/planned.js';
import { laneLoads } from './lanes.js';
import type { Flow, Load } from './load.js';
import { lotLoads } from './lots.js';
import { supplyLoads } from './supplies.js';

/** A stretch of a run, minutes since its start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * What is known of a build without running it: what its steps ask for, and the most that it can do, units a
 * working day (Infinity: nothing limits). Another rate or another chance leaves both as they are.
 */
export interface Arithmetic {
  readonly asks: Demand;
  readonly ceiling: number;
}

export const arithmeticOf = ({ model, scenario }: Pick<Planned, 'model' | 'scenario'>): Arithmetic => ({
  asks: demand(model),
  ceiling: capacity(model, scenario).highestRatePerDay ?? Infinity,
});

/** Loads of a build at a rate, units a working day, in the order of the route. */
export function loadsOf(
  plan: Planned,
  perDay: number,
  { from, to }: Stretch,
  { asks }: Pick<Arithmetic, 'asks'>,
): readonly Load[] {
  const { model, scenario, calendar } = plan;
  if (!mayGoInLoads(model) || !(perDay > 0)) return [];
  const flow: Flow = {
    model,
    scenario,
    asks,
    daily: dailyMinutes(model, scenario),
    perDay,
    workingDays: calendar.workingDays,
    released: (times) => cumulated(calendar.releaseDays, times, ({ rate }) => rate),
    from,
    to,
  };
  return [laneLoads, lotLoads, supplyLoads].flatMap((of) => of(flow)).sort((a, b) => a.step - b.step);
}

/** Trucks or lots of more than one unit, or parts from outside: without them nothing has to be reckoned. */
export const mayGoInLoads = ({ lanes, stations, supplies }: Model): boolean =>
  supplies.count > 0 ||
  lanes.capacity.some((capacity) => capacity > 1) ||
  stations.lotMost.some((most) => most > 1);

/**
 * The loads that a count over the weeks of a window has to reckon with: not those of less than a working day
 * that together are no more than `allowed` units, which may be missing anyway.
 */
export function loadsThatMatter(loads: readonly Load[], allowed: number): readonly Load[] {
  const small = loads.filter(({ cycleDays }) => cycleDays < 1).sort((a, b) => a.units - b.units);
  const leftOut = new Set<Load>();
  let units = 0;
  for (const load of small) {
    units += load.units;
    if (units <= allowed) leftOut.add(load);
  }
  return loads.filter((load) => !leftOut.has(load));
}
