import { z } from 'zod';
import { calendarOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { RatePhase, ReleaseByRate } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { WEEKDAYS } from '../values/quantity.js';
import { timetable, weekdays, whole, word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { releaseSite } from './rates.js';

const atTimes = keys(
  {
    at: timetable.describe(
      "Clock times, in the zone of the first station's site, on its working days. Example: " +
        '["07:00", "11:30"]',
    ),
    on: weekdays
      .optional()
      .describe('Weekdays with these times. Default: all working days of the site. Example: Mon, Wed, Fri'),
    units: whole(1).default(1).describe('Units that come at each of these times. Default: 1. Example: 2'),
  },
  'clock times: a map with the key at, such as { at: ["07:00", "11:30"] }',
).transform((written) => ({ kind: 'at times' as const, ...written }));
export type ClockArrivals = z.output<typeof atTimes>;

/** Units that come by themselves. */
export const arrivalsSchema = (time: TimeSchema) =>
  z
    .union([word('saturated'), time, atTimes], {
      error:
        'the word saturated, a time between units such as { exponential: { mean: 2 h } }, or clock times ' +
        'such as { at: ["07:00", "11:30"] }',
    })
    .optional()
    .describe(
      'Instead of `rate`: the time between units, drawn anew for each; or clock times at which units come; ' +
        'or `saturated`: a unit is always ready to enter. Example: { exponential: { mean: 2 h } }',
    );

/** As a rate, of which the units of a day go at its clock times. */
export function releaseAtTimes({ at, on, units }: ClockArrivals, start: string): ReleaseByRate {
  const perDay = units * at.length,
    phase: RatePhase =
      on === undefined ? { from: start, perDay } : { from: start, perWeek: perDay * on.length };
  return { kind: 'rate', phases: [phase], at: { minutes: at, on } };
}

/** Weekdays of arrivals on which nobody is there to take them. */
export function* arrivalFindings(scenario: Scenario): Iterable<Finding> {
  const { release } = scenario.programme,
    { calendar } = releaseSite(scenario),
    works = calendarOf(scenario, calendar)?.on;
  if (release.kind !== 'rate' || works === undefined) return;
  const idle = release.at?.on?.filter((day) => !works.includes(day)) ?? [];
  if (idle.length > 0)
    yield {
      path: ['programme', 'arrivals', 'on'],
      wanted: `weekdays on which the site of the first station works, by its calendar ${calendar}`,
      seen: idle.map((day) => WEEKDAYS[day - 1]).join(', '),
    };
}
