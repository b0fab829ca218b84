import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Distribution } from '../../random/distribution.js';
import { meanOf } from '../../random/distribution.js';
import { dayNumber, weekday } from '../calendar/date.js';
import { lengthOf, workingDayRule } from '../calendar/days.js';
import { ZoneClock } from '../calendar/zone.js';
import { calendarOf, stationsOf } from '../lookup/placed.js';
import type { CalendarSpec } from '../types/calendars.js';
import type { Scenario } from '../types/scenario.js';
import { orderCounts } from './orders.js';
import { askedRate, releaseSite } from './rates.js';

/** When a run begins, is watched and must have ended. Times are minutes since the programme's start. */
export interface RunSpan {
  readonly kind: 'programme' | 'steady state';
  /** The programme's start as minutes since 1970-01-01T00:00Z. */
  readonly origin: number;
  readonly clock: ZoneClock;
  /** Day numbers in the programme's zone: the first day, and the day at the start of which calendars end. */
  readonly startDay: number;
  readonly endDay: number;
  /** How far calendars are expanded; always finite. */
  readonly horizon: number;
  /** Hard end of the run; `Infinity` for a programme without `until`. */
  readonly end: number;
  readonly bucketEdges: readonly number[];
}

const YEAR_DAYS = 365;
/** Calendars of a steady-state run go on this long after its end, so that a look ahead finds a window. */
const SLACK_DAYS = 60;
const PARTS = 60;
/** A programme longer than this is taken for one that never ends. */
const LONGEST_DAYS = 200 * YEAR_DAYS;

/**
 * The span of a run. A programme's calendars reach to its planned release end plus its planned length again,
 * at least a year; or to `until`. A steady-state run's to its end and some slack.
 */
export function runSpan(scenario: Scenario): RunSpan {
  const { start, startMin = 0, zone, until, quantity, lengthMin, warmUpMin } = scenario.programme;
  const startDay = dayNumber(start);
  const untilDay = until === undefined ? undefined : dayNumber(until);
  const isSteady = quantity === undefined && lengthMin !== undefined;
  let days: number;
  if (isSteady) days = Math.ceil((warmUpMin + lengthMin) / MINUTES_PER_DAY) + SLACK_DAYS;
  else if (untilDay !== undefined) days = untilDay - startDay;
  else if (quantity !== undefined) days = planned(scenario, quantity, startDay);
  else
    throw new RangeError(
      'programme: expected a `quantity`, a date `until` or a `length`, got none of them; give one',
    );

  const endDay = startDay + days;
  const clock = new ZoneClock(zone, startDay, endDay);
  const origin = clock.instant(startDay * MINUTES_PER_DAY + startMin);
  const at = (day: number): number => midnightOf(day, { clock, origin });
  const common = { origin, clock, startDay, endDay, horizon: at(endDay) };
  const stop = untilDay === undefined ? Infinity : at(untilDay);
  if (isSteady) {
    const end = Math.min(warmUpMin + lengthMin, stop);
    const bucketEdges = Array.from(
      { length: PARTS + 1 },
      (_, i) => warmUpMin + (i * (end - warmUpMin)) / PARTS,
    );
    return { kind: 'steady state', ...common, end, bucketEdges };
  }
  const bucketEdges = [0];
  for (let monday = startDay + 8 - weekday(startDay); monday < endDay; monday += 7)
    bucketEdges.push(at(monday));
  bucketEdges.push(common.horizon);
  return { kind: 'programme', ...common, end: stop, bucketEdges };
}

/** The start of a day, by its number, in the zone of the programme: minutes since the programme's start. */
export const midnightOf = (day: number, { clock, origin }: Pick<RunSpan, 'clock' | 'origin'>): number =>
  clock.instant(day * MINUTES_PER_DAY) - origin;

/** Days to the end of calendars: to the planned release of the last unit, and as long again or a year. */
function planned(scenario: Scenario, quantity: number, startDay: number): number {
  const days = daysOfRelease(scenario, quantity, startDay);
  if (!(days <= LONGEST_DAYS)) {
    throw new RangeError(
      `programme: expected a plan that releases all ${quantity} units within 200 years, got none; ` +
        'raise the last rate, open the calendar, or give `until`',
    );
  }
  return days + Math.max(YEAR_DAYS, days);
}

function daysOfRelease(scenario: Scenario, quantity: number, startDay: number): number {
  const { release, orders } = scenario.programme;
  const spec = calendarOf(scenario, releaseSite(scenario).calendar);
  if (release.kind === 'interval') return Math.ceil((quantity * meanOf(release.interval)) / MINUTES_PER_DAY);
  if (release.kind === 'saturated')
    return Math.ceil((quantity * longestStep(scenario)) / meanDailyMinutes(spec));
  const works = workingDayRule(spec);
  const rate = askedRate(scenario),
    byRate = orderCounts(orders.list, quantity).byRate ?? 0;
  const lastDated =
    Math.max(
      startDay,
      ...orders.list.map((order) => (order.release === undefined ? startDay : dayNumber(order.release))),
    ) - startDay;
  let count = 0;
  for (let days = 0; days <= LONGEST_DAYS; days++) {
    if (works(startDay + days)) count += rate.onDay(startDay + days);
    // The last unit is released when quantity - 1 have been counted; one day more for rounding does no harm.
    if (count >= byRate - 1) return Math.max(days, lastDated) + 2;
  }
  return Infinity;
}

/** Place minutes of the slowest step of the unit's route, for a guess at how long a saturated line takes. */
function longestStep(scenario: Scenario): number {
  const stations = stationsOf(scenario);
  let longest = 1;
  for (const step of scenario.route) {
    if (step.kind === 'lane') continue;
    const mean = (d: Distribution | undefined): number => (d === undefined ? 0 : meanOf(d));
    const minutes = (step.sideBySide ?? [step]).map(
      ({ work, passes, process }) =>
        (passes === undefined ? mean(work) : passes.count * (mean(passes.work) + mean(passes.settle))) +
        mean(process),
    );
    longest = Math.max(
      longest,
      minutes.reduce((a, b) => a + b) / (stations.get(step.at)?.station.places ?? 1),
    );
  }
  return longest;
}

/** Working minutes a week over seven, breaks not taken off: close enough for a guess. */
function meanDailyMinutes(spec: CalendarSpec | undefined): number {
  if (spec === undefined) return MINUTES_PER_DAY;
  const day = spec.hours.reduce((sum, shift) => sum + lengthOf(shift), 0);
  return (day * spec.on.length) / 7;
}
