import type { Model } from '../../../flow/model/model.js';
import { power } from '../../../random/power.js';
import { rowsOf } from '../../lists.js';
import type { Build } from '../mix.js';
import { spotsOf } from '../spots.js';
import { type Columns, carried, mendMinutes, passedOn, type Stream } from './streams.js';

/** Columns of one sub-assembly at the end of a feeder. */
export type LeftOf = (route: number, build: Build) => Float64Array;

/** What joins at a step, by expectation. */
export interface Joining {
  readonly slots: readonly number[];
  readonly left: Float64Array;
  readonly amount: number;
  readonly replaces: boolean;
}

/**
 * What joins at a step with something open. Parts of a stock that only this step takes replace those it took
 * before; own parts, and others, come on top of what is there.
 */
export function joiningAt(model: Model, step: number, build: Build, stock: Build, leftOf: LeftOf): Joining[] {
  const { quality, steps } = model,
    { routeOf, takersOf } = spotsOf(model);
  const joining = [
    ...rowsOf(steps.needStart, step).map((n) => {
      const resource = steps.needResource[n];
      return {
        route: routeOf[resource],
        of: stock,
        amount: steps.needAmount[n],
        replaces: takersOf[resource].length === 1,
      };
    }),
    ...rowsOf(steps.ownStart, step).map((o) => ({
      route: steps.ownRoute[o],
      of: build,
      amount: 1,
      replaces: false,
    })),
  ];
  return joining.flatMap(({ route, of, ...how }) => {
    const slots = route < 0 ? [] : rowsOf(quality.carriedStart, route).map((row) => quality.carriedSlot[row]);
    return slots.length === 0 ? [] : [{ ...how, slots, left: leftOf(route, of) }];
  });
}

/**
 * Of several parts with the same flaw the unit has one item: 1 - (1 - r)^n. An own part counts at every visit
 * of the join, also of a rework that did not take it off.
 */
export function joinPart(
  { units, open }: Stream,
  columns: Columns,
  { slots, left, amount, replaces }: Joining,
): void {
  const bring = (column: number): void => {
    const chance = 1 - power(1 - left[column], amount);
    open[column] = replaces ? units * chance : open[column] + (units - open[column]) * chance;
  };
  for (const slot of slots) {
    bring(slot);
    if (!columns.withNotes) continue;
    bring(carried(columns, slot));
    bring(passedOn(columns, slot));
  }
  if (columns.withNotes) open[mendMinutes(columns)] += units * amount * left[mendMinutes(columns)];
}

/** Chance that a unit of the stream has something noted, slots taken as independent. */
export function chanceNoted({ units, open }: Stream, columns: Columns): number {
  let none = 1;
  for (const slot of columns.liveSlots)
    none *= 1 - (open[carried(columns, slot)] + open[passedOn(columns, slot)]) / units;
  return 1 - none;
}

/** All that is noted goes over to another stream. */
export function moveNotes(from: Stream, to: Stream, columns: Columns): void {
  for (const column of columns.noted) {
    to.open[column] += from.open[column];
    from.open[column] = 0;
  }
}

/**
 * All that is noted is mended; minutes over all units. `each`: mean work on an item without a time of its
 * own.
 */
export function mendAll({ open }: Stream, columns: Columns, each: number): number {
  let minutes = open[mendMinutes(columns)];
  for (const slot of columns.liveSlots) {
    const passed = open[passedOn(columns, slot)];
    minutes += passed * each;
    open[slot] = Math.max(0, open[slot] - passed);
  }
  for (const column of columns.noted) open[column] = 0;
  return minutes;
}
