import type { Observation } from '../../measure/observe.js';
import type { CapacityRow } from '../capacity/capacity.js';
import { type Planned, workingDaysBetween } from '../sample/planned.js';
import { meanInterval } from '../statistics/interval.js';
import { amount } from '../statistics/skewed-interval.js';
import { sum } from '../statistics/sums.js';
import type { LadderResult } from './results.js';
import { rungsOf } from './rungs.js';

/**
 * From what arithmetic allows a constraint to what is shipped, by cause. Each replication's causes add up to
 * the difference exactly, so their means do. The time of a place (person, truck, cart) a working day is A,
 * and arithmetic gives A / m units a day at m minutes a unit. What the time went to in the replication is
 * booked in minutes; what the S units shipped need of it by plan is taken off; the rest over m is the loss.
 * Own arithmetic, from the identity A - m S = sum of (minutes booked - minutes planned for S units).
 * @param observations of the weeks looked at
 * @param shippedPerDay in each of them
 * @returns null where arithmetic sets the constraint no limit
 */
export function ladder(
  plan: Planned,
  row: CapacityRow,
  observations: readonly Observation[],
  shippedPerDay: readonly number[],
  level: number,
): LadderResult | null {
  const rungs = rungsOf(plan, row),
    { kind, name, site, capacityPerDay } = row;
  if (rungs === null || capacityPerDay === null) return null;
  const byCause = new Map<string, number[]>();
  for (const [r, seen] of observations.entries()) {
    const days = workingDaysBetween(plan.calendar.workingDays, seen.endedAt - seen.minutes, seen.endedAt);
    for (const [cause, loss] of Object.entries(rungs(seen, days, shippedPerDay[r])))
      byCause.set(cause, [...(byCause.get(cause) ?? []), loss]);
  }
  return {
    of: { kind, name, site },
    allowedPerDay: capacityPerDay,
    losses: [...byCause]
      // What never was is no cause.
      .filter(([, losses]) => sum(losses.map(Math.abs)) > 1e-9 * losses.length)
      .map(([cause, losses]) => ({ cause, perDay: meanInterval(losses, level) })),
    // As the rate held is told.
    shippedPerDay: amount(shippedPerDay, level),
  };
}
