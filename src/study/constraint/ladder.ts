import type { Observation } from '../../measure/observe.js';
import type { CapacityRow } from '../capacity/capacity.js';
import { workingDaysBetween } from '../sample/planned.js';
import type { Sample } from '../sample/sample.js';
import { meanInterval } from '../statistics/interval.js';
import { sum } from '../statistics/sums.js';
import type { LadderResult } from './results.js';
import { rungsOf } from './rungs.js';

/**
 * From what arithmetic allows a constraint to what is shipped, by cause. Each replication's causes add up to
 * the difference exactly, so their means do. The time of a place (person, truck, cart) a working day is A,
 * and arithmetic gives A / m units a day at m minutes a unit. What the time went to in the replication is
 * booked in minutes; what the S units shipped need of it by plan is taken off; the rest over m is the loss.
 * Own arithmetic, from the identity A - m S = sum of (minutes booked - minutes planned for S units).
 * @param shippedPerDay of a replication
 * @returns null where arithmetic sets the constraint no limit
 */
export function ladder(
  sample: Sample,
  row: CapacityRow,
  shippedPerDay: (seen: Observation) => number,
): { readonly value: LadderResult | null } {
  const rungs = rungsOf(sample, row),
    byCause = new Map<string, number[]>(),
    shipped: number[] = [];
  if (rungs !== null)
    sample.fold(null, (known, seen) => {
      const perDay = shippedPerDay(seen),
        days = workingDaysBetween(sample.calendar.workingDays, seen.endedAt - seen.minutes, seen.endedAt);
      shipped.push(perDay);
      for (const [cause, loss] of Object.entries(rungs(seen, days, perDay))) {
        const losses = byCause.get(cause) ?? [];
        losses.push(loss);
        byCause.set(cause, losses);
      }
      return known;
    });
  const { kind, name, site, capacityPerDay } = row;
  return {
    get value() {
      return rungs === null || capacityPerDay === null
        ? null
        : {
            of: { kind, name, site },
            allowedPerDay: capacityPerDay,
            losses: [...byCause]
              // What never was is no cause.
              .filter(([, losses]) => sum(losses.map(Math.abs)) > 1e-9 * losses.length)
              .map(([cause, losses]) => ({ cause, perDay: meanInterval(losses, sample.level) })),
            shippedPerDay: meanInterval(shipped, sample.level),
          };
    },
  };
}
