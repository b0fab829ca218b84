import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { RELEASE_ARRIVALS, RELEASE_SATURATED, RELEASE_TIMES } from '../../flow/model/programme.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayNumber } from '../calendar/date.js';
import { minutesADay, startOf, timeInDay, type WorkingDay } from '../calendar/days.js';
import { releaseWorkingDays } from '../dated/stages.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import { calendarOf } from '../lookup/placed.js';
import type { ClockTimes } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import { compileOrders } from './build-order.js';
import type { ItemIds } from './opening/item-columns.js';
import { orderCounts } from './orders.js';
import { askedRate, releaseSite } from './rates.js';
import type { RunSpan } from './span.js';

/** A working day with units to release on it. */
export interface ReleaseDay extends WorkingDay {
  /** Units asked for on this day, by the rate and with a day of release of their own. */
  readonly rate: number;
  /** Units asked for on all days before it. */
  readonly before: number;
  /** The same by the rate alone, and the rate of its phase in a usual week; 0 where no rate is asked. */
  readonly byRate: number;
  readonly byRateBefore: number;
  readonly usual: number;
  /** Working minutes of it that have passed when the programme starts. */
  readonly passed: number;
}

/** Counts this close to a whole number are that number: ten days at 0.1 are one unit. */
const ROUNDING = 1e-9;
const tidy = (count: number): number =>
  Math.abs(count - Math.round(count)) < ROUNDING ? Math.round(count) : count;

/**
 * Days with units to release, from the programme's start to the day on which the last unit is released, or to
 * the end. `days` are the working days of the first station's site. Empty for releases that are not planned
 * by day.
 */
export function releaseDays(scenario: Scenario, days: readonly WorkingDay[], span: RunSpan): ReleaseDay[] {
  const { release, quantity, orders, startMin = 0, start } = scenario.programme;
  if (release.kind !== 'rate') return [];
  const asked = askedRate(scenario),
    // What would have gone on the first day before the start is none of them.
    gone = startMin > 0 ? asked.onDay(dayNumber(start)) : 0,
    calendar = calendarOf(scenario, releaseSite(scenario).calendar),
    byRateOnly = orderCounts(orders.list, quantity).byRate,
    most = byRateOnly === undefined ? undefined : byRateOnly + gone,
    end = Math.min(span.end, span.horizon);
  const dated = new Map<number, number>();
  for (const order of orders.list)
    if (order.release !== undefined)
      dated.set(dayNumber(order.release), (dated.get(dayNumber(order.release)) ?? 0) + 1);
  const out: ReleaseDay[] = [];
  let before = 0,
    byRateBefore = 0;
  for (const day of days) {
    if (startOf(day) >= end) break;
    const isOver = most !== undefined && byRateBefore > most - 1 + ROUNDING;
    if (isOver && dated.size === 0) break;
    const byRate = day.day < span.startDay || isOver ? 0 : asked.onDay(day.day),
      rate = byRate + (dated.get(day.day) ?? 0);
    // A day between the weekdays of clock times is one of the plan, though nothing comes.
    const isPlanned = byRate > 0 || (release.at?.on !== undefined && !isOver && day.day >= span.startDay);
    if (rate <= 0 && !isPlanned) continue;
    const isFirst = startMin > 0 && day.day === span.startDay;
    out.push({
      ...day,
      rate,
      before,
      byRate,
      byRateBefore,
      usual: isPlanned ? asked.usualOn(day.day) : 0,
      passed: isFirst ? Math.max(0, minutesADay(calendar) - day.minutes) : 0,
    });
    before = tidy(before + rate);
    byRateBefore = tidy(byRateBefore + byRate);
  }
  return out;
}

/**
 * Release times by rate, sorted, minutes. Each working minute of a day adds rate / (working minutes of the
 * day) to a count, and unit k goes when the count reaches k - 1: the first at the first working minute. A
 * count reached with the last minute of a day is released at the start of the next.
 */
export function releaseTimes(
  days: readonly ReleaseDay[],
  quantity: number | undefined,
  end: number,
): Float64Array {
  const times: number[] = [];
  const most = quantity ?? Infinity;
  let count = 0;
  for (const day of days) {
    const stop = day.byRateBefore + day.byRate - ROUNDING;
    for (; count < stop && times.length < most; count++) {
      const share = (count - day.byRateBefore) / day.byRate,
        minutes = share * (day.minutes + day.passed) - day.passed;
      if (day.passed > 0 && minutes < 0) continue;
      const at = timeInDay(day, Math.max(0, minutes));
      if (at >= end) return Float64Array.from(times);
      times.push(at);
    }
  }
  return Float64Array.from(times);
}

/**
 * The same at clock times, of which each has the same share of the units of its day; what is left of a unit
 * goes with the next.
 * @param instant when it is so many minutes by the clock of the site after 1970-01-01
 */
function timesByClock(
  days: readonly ReleaseDay[],
  { minutes }: ClockTimes,
  instant: (local: number) => number,
  quantity: number,
  end: number,
  from: number,
): Float64Array {
  const times: number[] = [];
  let count = 0;
  for (const { day, byRate, byRateBefore } of days)
    for (const [i, minute] of minutes.entries()) {
      const clock = instant(day * MINUTES_PER_DAY + minute),
        at = Math.max(0, clock),
        stop = byRateBefore + (byRate * (i + 1)) / minutes.length - ROUNDING;
      if (at >= end) return Float64Array.from(times);
      for (; count < stop && times.length < quantity; count++) if (clock >= from) times.push(at);
    }
  return Float64Array.from(times);
}

const RELEASE = { rate: RELEASE_TIMES, interval: RELEASE_ARRIVALS, saturated: RELEASE_SATURATED } as const;

/**
 * How units are released and when the run ends. Where the run ends before all are released, `times` is
 * shorter than `quantity`.
 */
export function compileProgramme(all: Compilation & ItemIds): Model['programme'] {
  const { scenario, book, draws, span } = all;
  const { release, quantity, warmUpMin, orders, startMin } = scenario.programme,
    from = startMin === undefined ? -Infinity : 0;
  const days = releaseWorkingDays(scenario, span, book);
  const releasing = releaseDays(scenario, days, span),
    most = orderCounts(orders.list, quantity).byRate,
    end = Math.min(span.end, span.horizon),
    { zone } = releaseSite(scenario);
  const byRate =
    release.kind === 'rate' && release.at !== undefined
      ? timesByClock(
          releasing,
          release.at,
          (local) => book.clock(zone).instant(local) - span.origin,
          most ?? Infinity,
          end,
          from,
        )
      : releaseTimes(releasing, most, end);
  const { columns, times } = compileOrders(all, days, byRate);
  return {
    release: RELEASE[release.kind],
    times,
    intervalDraw: release.kind === 'interval' ? draws.add('programme/interval', release.interval) : NO_DRAW,
    orders: columns,
    quantity: quantity ?? UNLIMITED,
    end: span.end,
    warmUp: warmUpMin,
    bucketEdges: Float64Array.from(span.bucketEdges),
    days:
      span.kind === 'programme' || scenario.outages.length > 0
        ? Math.ceil(span.horizon / MINUTES_PER_DAY)
        : 0,
  };
}
