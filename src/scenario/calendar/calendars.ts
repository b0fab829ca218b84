import type { CalendarSpec, ClockSpan } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { z } from 'zod';

import type { Scenario } from '../types/scenario.js';
import { clockSpan, keys, oneOrMore } from '../values/keys.js';
import { daySpan, overtime, shutdowns, weekdays } from './overtime.js';

const HOURS_WANTED = 'a list of shifts, such as ["06:00-14:30"]';
const HOLIDAY_WANTED = 'a day or a span of days, such as "2027-05-31" or "2027-07-12 to 2027-07-30"';

export const calendarSchema = keys(
  {
    hours: oneOrMore(clockSpan, HOURS_WANTED).describe(
      'The shifts of a working day. An end at or before the start is on the next day, so ' +
        '"22:00-06:00" is a night shift and belongs to the day it starts on. Example: ' +
        '["06:00-14:30", "14:30-23:00"]',
    ),
    on: weekdays
      .prefault('Mon-Fri')
      .describe(
        'The working days of the week: `Mon-Fri`, `Mon-Thu, Sat`, `every day`, or a list. Default: Mon-Fri',
      ),
    breaks: z
      .array(clockSpan, { error: 'a list of breaks, such as ["09:30-09:45"]' })
      .default([])
      .describe(
        'Breaks inside the shifts; work stops and goes on after them. Default: none. Example: ' +
          '["09:30-09:45", "12:00-12:30"]',
      ),
    holidays: z
      .array(daySpan, { error: `a list, each entry ${HOLIDAY_WANTED}` })
      .default([])
      .describe(
        'Days off, single or as spans that include both ends. Default: none. Example: [2027-05-31, ' +
          '"2027-07-12 to 2027-07-30"]',
      ),
    shutdowns,
    overtime,
  },
  'a calendar: a map with the key hours',
).transform((calendar): CalendarSpec => calendar);

export const WEEK = 7 * MINUTES_PER_DAY;

/** Minutes; an end at or before the start is on the next day. */
export const lengthOf = ({ startMin, endMin }: ClockSpan): number =>
  endMin > startMin ? endMin - startMin : endMin + MINUTES_PER_DAY - startMin;

/** Shifts that overlap, breaks outside the shifts, calendars without working time. */
export function calendarFindings(scenario: Scenario): Finding[] {
  return Object.entries(scenario.calendars).flatMap(([name, calendar]) => {
    const path = ['calendars', name];
    const found: Finding[] = [];
    const overlap = overlapping(calendar);
    if (overlap !== undefined)
      found.push({
        path: [...path, 'hours'],
        wanted: 'shifts that do not overlap, also not with the shift of the next day',
        seen: overlap.map(sayClock).join(' and '),
      });
    calendar.breaks.forEach((pause, i) => {
      if (
        ![calendar, ...calendar.overtime].some(({ hours }) =>
          hours.some((shift) => offsetIn(shift, pause) !== undefined),
        )
      )
        found.push({
          path: [...path, 'breaks', i],
          wanted: 'a break inside a shift',
          seen: `"${sayClock(pause)}"`,
        });
    });
    calendar.hours.forEach((shift) => {
      if (workingMinutes(shift, calendar.breaks) === 0)
        found.push({
          path: [...path, 'breaks'],
          wanted: 'breaks that leave working time in each shift',
          seen: `none left in ${sayClock(shift)}`,
        });
    });
    return found;
  });
}

/** Minutes from the start of the shift to the break, if the break lies inside. */
export function offsetIn(shift: ClockSpan, pause: ClockSpan): number | undefined {
  const offset = (pause.startMin - shift.startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY;
  return offset + lengthOf(pause) <= lengthOf(shift) ? offset : undefined;
}

function workingMinutes(shift: ClockSpan, breaks: readonly ClockSpan[]): number {
  const off = new Uint8Array(lengthOf(shift));
  for (const pause of breaks) {
    const offset = offsetIn(shift, pause);
    if (offset !== undefined) off.fill(1, offset, offset + lengthOf(pause));
  }
  return off.reduce((free, minute) => free + 1 - minute, 0);
}

/** The first two shifts of a week that overlap. */
function overlapping({ hours, on }: CalendarSpec): ClockSpan[] | undefined {
  const week = on.flatMap((day) =>
    hours.map((shift) => ({
      shift,
      start: (day - 1) * MINUTES_PER_DAY + shift.startMin,
      end: (day - 1) * MINUTES_PER_DAY + shift.startMin + lengthOf(shift),
    })),
  );
  week.sort((a, b) => a.start - b.start);
  for (const [i, one] of week.entries()) {
    const next = week[i + 1] ?? { ...week[0]!, start: week[0]!.start + WEEK };
    if (one.end > next.start) return [one.shift, next.shift];
  }
  return undefined;
}

function sayClock({ startMin, endMin }: ClockSpan): string {
  const clock = (min: number): string =>
    `${String(Math.floor(min / 60)).padStart(2, '0')}:${String(min % 60).padStart(2, '0')}`;
  return `${clock(startMin)}-${clock(endMin)}`;
}
