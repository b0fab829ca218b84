import { RELEASE_TIMES } from '../../flow/model/programme.js';
import { countWhere, MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate, weekday } from '../../scenario/calendar/date.js';
import { runSpan } from '../../scenario/programme/span.js';
import { Deferred } from '../sample/deferred.js';
import type { Folded, Sample } from '../sample/sample.js';
import { Counts } from '../statistics/counts.js';
import { lastShipped } from './dates.js';

/** Units released by plan, due and shipped, counted up to the end of each day or ISO week. */
export interface PlanResult {
  readonly unit: 'day' | 'week';
  /** First day of each, and the first day after it. */
  readonly starts: readonly string[];
  readonly ends: readonly string[];
  /** By the plan; null where releases are not planned by date. */
  readonly released: readonly number[] | null;
  /** Null where nothing is due by date. */
  readonly due: readonly number[] | null;
  /**
   * Quantiles over replications of the units shipped (rank ceil(n p) of n replications): the spread of single
   * builds, no interval of a mean.
   */
  readonly shipped: {
    readonly p10: readonly number[];
    readonly p50: readonly number[];
    readonly p90: readonly number[];
  };
}

/** A programme of at most so many days is counted day by day. */
const MOST_DAYS = 70;

/** Units released by plan, due and shipped, added up over the programme; null without a quantity. */
export function shippedAgainstPlan(sample: Sample): Deferred<PlanResult | null> | null {
  const {
    model: { programme },
    scenario,
  } = sample;
  if (scenario.programme.quantity === undefined) return null;
  const { startDay, clock, origin } = runSpan(scenario),
    at = (day: number): number => clock.instant(day * MINUTES_PER_DAY) - origin;
  const released = programme.release === RELEASE_TIMES ? programme.times : null,
    isSame = sameDueDates(sample),
    mostDays = at(startDay + MOST_DAYS);
  const shipped = {
    day: shippedBy(sample, new Grid('day', startDay, at), mostDays),
    week: shippedBy(sample, new Grid('week', startDay, at), Infinity),
  };
  const latest = sample.fold(NaN, (known, each) => {
    const last = lastShipped(each);
    return last > known || Number.isNaN(known) ? last : known;
  });
  return new Deferred(() => {
    if (Number.isNaN(latest.value)) return null;
    const dates = sorted(sample.first.dueAt.filter((time) => time < Infinity)),
      due = dates.length === 0 || !isSame.value ? null : dates;
    const last = Math.max(latest.value, released?.at(-1) ?? 0, due?.at(-1) ?? 0),
      unit = last <= mostDays ? 'day' : 'week';
    const { days, ends } = new Grid(unit, startDay, at).reaching(last),
      counts = shipped[unit].value;
    const quantile = (p: number): number[] =>
      ends.map((_, e) => counts[Math.min(e, counts.length - 1)].quantile(p));
    return {
      unit,
      starts: days.slice(0, -1).map(isoDate),
      ends: days.slice(1).map(isoDate),
      released: released === null ? null : ends.map((edge) => countWhere(released, (time) => time < edge)),
      due: due === null ? null : ends.map((edge) => upTo(due, edge)),
      shipped: { p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9) },
    };
  });
}

/**
 * Units shipped up to each end of a grid over replications, up to the end behind which nothing was shipped,
 * or `until`.
 */
function shippedBy(sample: Sample, grid: Grid, until: number): Folded<readonly Counts[]> {
  return sample.fold<Counts[]>([new Counts()], (known, { shippedAt }) => {
    const times = sorted(shippedAt),
      { ends } = grid.reaching(Math.min(until, times.at(-1) ?? 0));
    // Those before had shipped all of theirs by then.
    while (known.length < ends.length) known.push(known.at(-1)!.copy());
    known.forEach((counts, e) => {
      counts.add(upTo(times, ends[e]));
    });
    return known;
  });
}

/**
 * Whether all replications have the due dates of the first: they do not where dates follow from releases by
 * chance.
 */
function sameDueDates(sample: Sample): Folded<boolean> {
  return sample.fold(
    true,
    (known, { dueAt }) => known && dueAt.every((time, i) => time === sample.first.dueAt[i]),
  );
}

/**
 * Day numbers from the programme's start on, and the times at which each but the first begins; one day or
 * week at least.
 */
class Grid {
  readonly days: number[];
  readonly ends: number[] = [];

  /** @param at when a day begins, minutes */
  constructor(
    private readonly unit: 'day' | 'week',
    startDay: number,
    private readonly at: (day: number) => number,
  ) {
    this.days = [startDay];
  }

  /** Grown to the first end that is not before a time. */
  reaching(time: number): this {
    while (this.ends.length === 0 || this.ends.at(-1)! < time) {
      const day = this.days.at(-1)!,
        next = this.unit === 'day' ? day + 1 : day + 8 - weekday(day);
      this.days.push(next);
      this.ends.push(this.at(next));
    }
    return this;
  }
}

const upTo = (times: ArrayLike<number>, edge: number): number => countWhere(times, (time) => time <= edge);
const sorted = (times: Float64Array): Float64Array => times.filter((time) => !Number.isNaN(time)).sort();
