import { RELEASE_TIMES } from '../flow/model.js';
import { isoDate, MINUTES_PER_DAY, weekday } from '../scenario/calendar-date.js';
import { runSpan } from '../scenario/compile-span.js';
import type { PlanResult } from './results-programme.js';
import type { Sample } from './sample.js';

/** A programme of at most so many days is counted day by day. */
const MOST_DAYS = 70;

/** Units released by plan, due and shipped, added up over the programme; null without a quantity. */
export function shippedAgainstPlan(sample: Sample): PlanResult | null {
  const { observations, model: { programme }, scenario } = sample;
  const shipped = observations.map(({ shippedAt }) => sorted(shippedAt));
  if (scenario.programme.quantity === undefined || shipped.every(({ length }) => length === 0)) return null;
  const released = programme.release === RELEASE_TIMES ? programme.times : null, due = dueByPlan(sample);
  const last = Math.max(...[...shipped, released ?? [], due ?? []].map((times) => times.at(-1) ?? 0));
  const { unit, days, ends } = grid(sample, last);
  const before = (times: ArrayLike<number>, edge: number): number => countWhere(times, (time) => time < edge), upTo = (times: ArrayLike<number>, edge: number): number => countWhere(times, (time) => time <= edge);
  const spread = ends.map((edge) => shipped.map((times) => upTo(times, edge)).sort((a, b) => a - b));
  const quantile = (p: number): number[] => spread.map((counts) => counts[Math.max(0, Math.ceil(counts.length * p - 1e-9) - 1)]);
  return {
    unit,
    starts: days.slice(0, -1).map(isoDate), ends: days.slice(1).map(isoDate),
    released: released === null ? null : ends.map((edge) => before(released, edge)),
    due: due === null ? null : ends.map((edge) => upTo(due, edge)),
    shipped: { p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9) },
  };
}

/** Due dates, sorted; null where there are none, or where they follow from releases by chance. */
function dueByPlan({ observations }: Sample): Float64Array | null {
  const [first, ...others] = observations, due = sorted(first.dueAt.filter((time) => time < Infinity));
  const isSame = others.every(({ dueAt }) => dueAt.every((time, i) => time === first.dueAt[i]));
  return due.length === 0 || !isSame ? null : due;
}

/** Day numbers from the programme's start on, and the times at which each but the first begins, to the first after `last`. */
function grid({ scenario }: Sample, last: number): { unit: 'day' | 'week'; days: number[]; ends: number[] } {
  const { startDay, clock, origin } = runSpan(scenario), at = (day: number): number => clock.instant(day * MINUTES_PER_DAY) - origin;
  const unit = last <= at(startDay + MOST_DAYS) ? 'day' : 'week', days = [startDay], ends: number[] = [];
  do {
    const day = days[days.length - 1], next = unit === 'day' ? day + 1 : day + 8 - weekday(day);
    days.push(next);
    ends.push(at(next));
  } while (ends[ends.length - 1] < last);
  return { unit, days, ends };
}

const sorted = (times: Float64Array): Float64Array => times.filter((time) => !Number.isNaN(time)).sort();

/** How many of sorted times meet a condition that is true up to some time. */
function countWhere(times: ArrayLike<number>, is: (time: number) => boolean): number {
  let low = 0, high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (is(times[middle])) low = middle + 1; else high = middle;
  }
  return low;
}
