import type { Model } from '../../flow/model/model.js';
import { endOf, startOf, type WorkingDay } from '../../scenario/calendar/days.js';
import { releaseWorkingDays } from '../../scenario/dated/stages.js';
import { type ProgrammeClock, programmeClock } from '../../scenario/programme/clock.js';
import { type ReleaseDay, releaseDays } from '../../scenario/programme/release.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { sumOf } from '../statistics/sums.js';

/**
 * The working days in which a programme is counted, those of the first station's site, and the planned
 * releases on them.
 */
export interface ReleaseCalendar {
  readonly kind: 'programme' | 'steady state';
  readonly workingDays: readonly WorkingDay[];
  /** Days on which units are released by plan; empty for other releases. */
  readonly releaseDays: readonly ReleaseDay[];
}

export function releaseCalendar(scenario: Scenario): ReleaseCalendar {
  const span = runSpan(scenario),
    workingDays = releaseWorkingDays(scenario, span);
  return { kind: span.kind, workingDays, releaseDays: releaseDays(scenario, workingDays, span) };
}

/**
 * Working days between two times, minutes: each day counts by the share of its working minutes that lies
 * there.
 */
export function workingDaysBetween(days: readonly WorkingDay[], from: number, to: number): number {
  return sumOf(days, (day) => minutesBetween(day, from, to) / day.minutes);
}

/** Working minutes of a day between two times. */
export function minutesBetween({ windows }: WorkingDay, from: number, to: number): number {
  return sumOf(windows, ({ start, end }) => Math.max(0, Math.min(end, to) - Math.max(start, from)));
}

/**
 * What days are worth that have gone by at each of sorted times, minutes: each day by the share of its
 * working minutes.
 */
export function cumulated<Day extends WorkingDay>(
  days: readonly Day[],
  times: ArrayLike<number>,
  worth: (day: Day) => number,
): Float64Array {
  const all = days.values();
  let next = all.next(),
    over = 0;
  return Float64Array.from(times, (time) => {
    for (; next.done !== true && endOf(next.value) <= time; next = all.next()) over += worth(next.value);
    if (next.done === true || startOf(next.value) >= time) return over;
    return over + (worth(next.value) * minutesBetween(next.value, -Infinity, time)) / next.value.minutes;
  });
}

/** What was planned, whatever comes of it. */
export interface Planned {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly clock: ProgrammeClock;
  readonly calendar: ReleaseCalendar;
}

export const planned = (scenario: Scenario, model: Model): Planned => ({
  scenario,
  model,
  clock: programmeClock(scenario),
  calendar: releaseCalendar(scenario),
});
