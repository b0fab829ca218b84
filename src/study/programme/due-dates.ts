import { hasDueDates } from '../../flow/model/orders.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { ratio } from '../statistics/sums.js';

/**
 * Due dates kept and missed. A unit not shipped in the run is late if its due date had passed, or if it could
 * not be shipped any more.
 */
export interface DueResult {
  /** Units with a due date of which it is known, a replication. */
  readonly units: Estimate;
  /** Share of them that was late. */
  readonly late: Estimate;
  /** How late those were that were shipped after their due date, mean, days. */
  readonly daysLate: Estimate;
}

/** How well due dates were kept; null where nothing is due. */
export function dueDates(sample: Sample): Pending<DueResult | null> {
  if (!hasDueDates(sample.model)) return null;
  return {
    units: sample.amount((each) => count(each).due),
    late: sample.share((each) => {
      const { late, due } = count(each);
      return ratio(late, due);
    }),
    daysLate: sample.amount(({ lateMinutes, late }) => ratio(lateMinutes, late * MINUTES_PER_DAY)),
  };
}

/**
 * The chance of a unit to be late, by the replications in which it is known; null where it is not due or not
 * known in any.
 */
export function chanceLate(sample: Sample, index: number): Deferred<Proportion | null> {
  const known = sample.count((each) => isLate(each, index) !== null),
    late = sample.count((each) => isLate(each, index) === true);
  return new Deferred(() => (known.value === 0 ? null : proportion(late.value, known.value, sample.level)));
}

/** Null: it is not due, or the run was cut off before. */
function isLate({ dueAt, shippedAt, endedAt, outcome }: Observation, index: number): boolean | null {
  const due = dueAt[index] ?? Infinity,
    shipped = shippedAt[index];
  if (due === Infinity) return null;
  if (shipped >= 0) return shipped > due;
  return outcome !== 'ended' || endedAt > due ? true : null;
}

/** Without a quantity single units are not kept, and those that are shipped count. */
function count(each: Observation): Pick<Observation, 'due' | 'late'> {
  if (each.dueAt.length === 0) return each;
  const known = Array.from(each.dueAt, (_, index) => isLate(each, index)).filter((late) => late !== null);
  return { due: known.length, late: known.filter(Boolean).length };
}
