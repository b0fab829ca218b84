import { hasDueDates } from '../flow/model-orders.js';
import type { Observation } from '../measure/observation.js';
import { proportion } from './proportion.js';
import type { Proportion } from './results.js';
import type { DueResult } from './results-programme.js';
import { ratio, type Sample } from './sample.js';

const DAY = 1440;

/** How well due dates were kept; null where nothing is due. */
export function dueDates(sample: Sample): DueResult | null {
  if (!hasDueDates(sample.model)) return null;
  const counts = new Map(sample.observations.map((each) => [each, count(each)]));
  return {
    units: sample.amount((each) => counts.get(each)!.due),
    late: sample.share((each) => ratio(counts.get(each)!.late, counts.get(each)!.due)),
    daysLate: sample.amount((each) => ratio(counts.get(each)!.lateMinutes, counts.get(each)!.shippedLate * DAY)),
  };
}

/** The chance of a unit to be late, by the replications in which it is known; null where it is not due or not known in any. */
export function chanceLate({ observations, level }: Sample, index: number): Proportion | null {
  const known = observations.map((each) => isLate(each, index)).filter((late) => late !== null);
  return known.length === 0 ? null : proportion(known.filter((late) => late).length, known.length, level);
}

/** Null: it is not due, or the run was cut off before. */
function isLate({ dueAt, shippedAt, endedAt, outcome }: Observation, index: number): boolean | null {
  const due = dueAt[index] ?? Infinity, shipped = shippedAt[index];
  if (due === Infinity) return null;
  if (shipped >= 0) return shipped > due;
  return outcome !== 'ended' || endedAt > due ? true : null;
}

interface Count { due: number; late: number; shippedLate: number; lateMinutes: number }
/** Without a quantity single units are not kept, and those that are shipped count. */
function count(each: Observation): Count {
  if (each.dueAt.length === 0) return { due: each.due, late: each.late, shippedLate: each.late, lateMinutes: each.lateMinutes };
  const counted: Count = { due: 0, late: 0, shippedLate: each.late, lateMinutes: each.lateMinutes };
  for (let index = 0; index < each.dueAt.length; index++) {
    const late = isLate(each, index);
    if (late !== null) counted.due++;
    if (late === true) counted.late++;
  }
  return counted;
}
