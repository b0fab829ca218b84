import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { lastUnitDay } from './dates.js';

/** What is read of a replication to set it against the same build without an outage: a kilobyte or two. */
export interface Shipments extends Pick<Observation, 'outcome' | 'endedAt' | 'shippedOn'> {
  /** When the last unit was shipped, days since the start; NaN unless the programme was finished. */
  readonly lastUnitDay: number;
}

export const shipmentsOf = (seen: Observation): Shipments => ({
  outcome: seen.outcome,
  endedAt: seen.endedAt,
  shippedOn: seen.shippedOn,
  lastUnitDay: lastUnitDay(seen),
});

/** A replication of the build as planned, and the same one, by the same draws, without an outage. */
export interface Pair {
  readonly with: Shipments;
  readonly without: Shipments;
}

/** Units behind by replication and day, from the start to the last day on which any is shipped. */
export type BehindByDay = readonly Float64Array[];

/** Midnight is an hour off the days of 24 h where the clocks have changed; and a little more. */
const CHANGE_OF_CLOCK = 61;

/**
 * The day of 24 h since the start in which something begins, and in which something ends: what ends at
 * midnight ends in the day before.
 */
export const dayOf = (time: number): number => Math.floor((time + CHANGE_OF_CLOCK) / MINUTES_PER_DAY);
export const lastDayOf = (time: number): number =>
  Math.max(0, Math.floor((time - CHANGE_OF_CLOCK) / MINUTES_PER_DAY));

/** Units shipped up to the end of each of so many days. */
export function shippedUpTo({ shippedOn }: Pick<Shipments, 'shippedOn'>, days: number): Float64Array {
  let units = 0;
  return Float64Array.from({ length: days }, (_, day) => (units += shippedOn[day] ?? 0));
}

/**
 * Units shipped without less units shipped with, up to the end of each day.
 * @param last day that is to be among them at least
 */
export function behindByDay(pairs: readonly Pair[], last: number): BehindByDay {
  const days = pairs.reduce(
    (most, pair) => Math.max(most, pair.with.shippedOn.length, pair.without.shippedOn.length),
    last + 1,
  );
  return pairs.map((pair) => {
    const shipped = shippedUpTo(pair.with, days);
    return shippedUpTo(pair.without, days).map((units, day) => units - shipped[day]);
  });
}
