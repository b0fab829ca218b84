import { UNLIMITED } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import { RELEASE_TIMES } from '../../flow/model/programme.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { isoDate } from '../../scenario/calendar/date.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { count, exact } from '../format.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import { knownQuantile } from '../sample/known-quantile.js';
import type { Planned } from '../sample/planned.js';
import type { Sample } from '../sample/sample.js';
import { Counts } from '../statistics/counts.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';
import { chanceLate } from './due-dates.js';

const QUANTILES = [0.5, 0.8, 0.95];
/** A day that ends at midnight does not become the next by the last bits of a quotient. */
const MINUTE_DIGITS = 6;

/**
 * A quantile over replications with its order-statistic interval; null where the replications are too few,
 * `why` then says so.
 */
export interface DateQuantile {
  readonly p: number;
  readonly date: string | null;
  readonly low: string | null;
  readonly high: string | null;
  readonly why: string | null;
}

/**
 * Quantiles over replications of the date on which the last unit was shipped. A replication that was not
 * finished comes after all that were: its date is not known, only that it is later. None without a quantity.
 */
export function lastUnit(sample: Sample): Pending<DateQuantile[]> {
  if (sample.scenario.programme.quantity === undefined) return [];
  const days = sample.counts((each) =>
    sample.clock.day(each.outcome === 'finished' ? lastShipped(each) : Infinity),
  );
  return QUANTILES.map((p) => new Deferred(() => dateQuantile(days.value, p, sample.level)));
}

/**
 * The same of replications of which only that is known.
 * @param days when the last unit was shipped, days since the start; NaN where the programme was not finished
 */
export function lastUnitDates(
  { programme }: Scenario,
  days: readonly number[],
  clock: ProgrammeClock,
  level: number,
): DateQuantile[] {
  if (programme.quantity === undefined) return [];
  const known = new Counts();
  for (const day of days)
    known.add(
      Number.isNaN(day) ? Infinity : clock.day(Number((day * MINUTES_PER_DAY).toFixed(MINUTE_DIGITS))),
    );
  return QUANTILES.map((p) => dateQuantile(known, p, level));
}

/**
 * The day by which the plan has all units shipped: the last on which one of them is not late, ISO. Null where
 * there is no quantity, one is not due, or it is due by when it enters and entries are not planned by date.
 */
export function plannedEnd({ model, clock }: Pick<Planned, 'model' | 'clock'>): string | null {
  const { release, times, quantity, orders } = model.programme;
  if (quantity >= UNLIMITED) return null;
  const due = Array.from({ length: quantity }, (_, i) => {
    const own = orders.dueAt[i] ?? Infinity;
    return own < Infinity
      ? own
      : release === RELEASE_TIMES
        ? (times[i] ?? Infinity) + orders.dueAfter
        : Infinity;
  });
  return dueDate(clock, Math.max(...due));
}

/** When the last unit was shipped, minutes; NaN if none was, or if it was not kept. */
export function lastShipped({ shippedAt }: Observation): number {
  return shippedAt.reduce((last, time) => (time > last || Number.isNaN(last) ? time : last), NaN);
}

/** The same in days since the start; NaN unless the programme was finished. */
export const lastUnitDay = (seen: Observation): number =>
  seen.outcome === 'finished' ? lastShipped(seen) / MINUTES_PER_DAY : NaN;

/** A quantile of local days by number; Infinity stands for later than all known. */
function dateQuantile(days: Counts, p: number, level: number): DateQuantile {
  const { middle: date, ...bounds } = knownQuantile(
    days,
    p,
    level,
    isoDate,
    'no unit was shipped',
    (late) => `${exact(late)} of ${count(days.n, 'replication')} ${late === 1 ? 'was' : 'were'} not finished`,
  );
  return { p, date, ...bounds };
}

export interface UnitResult {
  readonly number: number;
  /** What the planner calls it; else its number. */
  readonly build: string;
  /**
   * Last day on which it is not late; null where it is not due, or not on the same day in all replications.
   */
  readonly due: string | null;
  /** Chance to be shipped after it; null where it is not due. */
  readonly late: Proportion | null;
  /**
   * P50, P80 and P95 of the date of shipping; null where the replications are too few or too many did not
   * ship it.
   */
  readonly shipped: readonly Omit<DateQuantile, 'why'>[];
  /** From entry to shipping, of the replications that shipped it. */
  readonly leadDays: Estimate;
}

/**
 * When each unit is shipped and due, by build number. Where a replication did not ship it, it comes after all
 * that did.
 */
export function units(sample: Sample): Pending<UnitResult[]> {
  const {
    scenario: {
      programme: { quantity },
    },
    clock,
    level,
  } = sample;
  return Array.from({ length: quantity ?? 0 }, (_, index): Pending<UnitResult> => {
    const days = sample.counts(({ shippedAt }) =>
      Number.isNaN(shippedAt[index]) ? Infinity : clock.day(shippedAt[index]),
    );
    return {
      number: index + 1,
      build: buildName(sample.model, index + 1),
      due: dueDay(sample, index),
      late: chanceLate(sample, index),
      shipped: QUANTILES.map(
        (p) =>
          new Deferred(() => {
            const { date, low, high } = dateQuantile(days.value, p, level);
            return { p, date, low, high };
          }),
      ),
      leadDays: sample.amount(
        ({ enteredAt, shippedAt }) => (shippedAt[index] - enteredAt[index]) / MINUTES_PER_DAY,
      ),
    };
  });
}

/** The end of a due day is midnight, the first instant of the next day; a moment earlier is the day meant. */
const dueDate = (clock: ProgrammeClock, due: number): string | null => clock.date(due - 0.001);

function dueDay(sample: Sample, index: number): Deferred<string | null> {
  const due = ({ dueAt }: Pick<Observation, 'dueAt'>): number => dueAt[index] ?? Infinity,
    others = sample.count((each) => due(each) !== due(sample.first));
  return new Deferred(() => (others.value > 0 ? null : dueDate(sample.clock, due(sample.first))));
}
