import type { WorkingDay } from './calendar-days.js';
import { rateOn, type RunSpan } from './compile-span.js';
import type { ReleaseByRate } from './scenario.js';

/** A working day with units to release on it. */
export interface ReleaseDay extends WorkingDay {
  /** Units asked for on this day. */
  readonly rate: number;
  /** Units asked for on all days before it. */
  readonly before: number;
}

/** Counts this close to a whole number are that number: ten days at 0.1 are one unit. */
const ROUNDING = 1e-9;

/**
 * Days with a rate above 0, from the programme's start to the day on which the last unit is released, or to the end.
 * `days` are the working days of the first station's site.
 */
export function releaseDays(release: ReleaseByRate, days: readonly WorkingDay[], quantity: number | undefined, span: RunSpan): ReleaseDay[] {
  const rateOf = rateOn(release);
  const end = Math.min(span.end, span.horizon);
  const out: ReleaseDay[] = [];
  let count = 0;
  for (const day of days) {
    if (quantity !== undefined && count > quantity - 1 + ROUNDING) break;
    const rate = day.day < span.startDay ? 0 : rateOf(day.day);
    if (rate <= 0 || day.windows[0].start >= end) continue;
    out.push({ ...day, rate, before: count });
    count += rate;
    if (Math.abs(count - Math.round(count)) < ROUNDING) count = Math.round(count);
  }
  return out;
}

/**
 * Release times, sorted, minutes. Each working minute of a day adds rate / (working minutes of the day) to a count, and
 * unit k goes when the count reaches k - 1: the first at the first working minute. A count reached with the last minute
 * of a day is released at the start of the next.
 */
export function releaseTimes(days: readonly ReleaseDay[], quantity: number | undefined, end: number): Float64Array {
  const times: number[] = [];
  const most = quantity ?? Infinity;
  for (const day of days) {
    const stop = day.before + day.rate - ROUNDING;
    for (let count = times.length; count < stop && times.length < most; count++) {
      const at = timeInDay(day, Math.max(0, ((count - day.before) / day.rate) * day.minutes));
      if (at >= end) return Float64Array.from(times);
      times.push(at);
    }
  }
  return Float64Array.from(times);
}

/** When `minutes` of the day's working time have passed; at the end of a window the start of the next. */
function timeInDay(day: WorkingDay, minutes: number): number {
  let rest = minutes;
  for (const { start, end } of day.windows) {
    if (rest < end - start) return start + rest;
    rest -= end - start;
  }
  return day.windows[day.windows.length - 1].end;
}
