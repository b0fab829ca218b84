import { z } from 'zod';
import type { CalendarSpec, ClockSpan, Shutdown } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, oneOrMore } from '../values/keys.js';
import { sayClock } from '../values/quantity.js';
import { clockSpan, date, daySpan, SPAN_OF_DAYS, text, weekdays } from '../values/scalars.js';
import { lengthOf, offsetIn, WEEK, weekShifts } from './days.js';
import { overtime } from './overtime.js';

export const calendarName = name('the name of a calendar');

const HOURS_WANTED = 'a list of shifts, such as ["06:00-14:30"]';

const shutdown = z.union(
  [
    daySpan.transform((span): Shutdown => ({ ...span, note: undefined })),
    keys(
      {
        from: date.describe('First day off. Example: 2027-07-12'),
        to: date.describe('Last day off. Example: 2027-07-30'),
        note: text.optional().describe('What for, shown on the report. Example: new oven'),
      },
      'a shutdown: a map with the keys from and to',
    ).refine((span) => span.from <= span.to, { error: 'a day not before the first', path: ['to'] }),
  ],
  { error: `${SPAN_OF_DAYS}, or { from: 2027-07-12, to: 2027-07-30, note: new oven }` },
);

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
        'Breaks inside the shifts; work stops and resumes after them. Default: none. Example: ' +
          '["09:30-09:45", "12:00-12:30"]',
      ),
    holidays: z
      .array(daySpan, { error: `a list, each entry ${SPAN_OF_DAYS}` })
      .default([])
      .describe(
        'Days off, single or as spans that include both ends. Default: none. Example: [2027-05-31, ' +
          '"2027-07-12 to 2027-07-30"]',
      ),
    shutdowns: z
      .array(shutdown, { error: `a list, each entry ${SPAN_OF_DAYS}` })
      .default([])
      .describe(
        'Planned shutdowns: days off like holidays, but listed on the report. Default: none. ' +
          'Example: [{ from: 2027-07-12, to: 2027-07-30, note: new oven }]',
      ),
    overtime,
  },
  'a calendar: a map with the key hours',
);

/** Shifts that overlap, breaks outside the shifts, calendars without working time. */
export function* calendarFindings(scenario: Scenario): Iterable<Finding> {
  for (const [name, calendar] of Object.entries(scenario.calendars)) {
    const path = ['calendars', name],
      overlap = overlapping(calendar);
    if (overlap !== undefined)
      yield {
        path: [...path, 'hours'],
        wanted: 'shifts that do not overlap, nor with the shift of the next day',
        seen: overlap.map(saySpan).join(' and '),
      };
    const shifts = [calendar, ...calendar.overtime].flatMap(({ hours }) => hours);
    for (const [i, pause] of calendar.breaks.entries())
      if (!shifts.some((shift) => offsetIn(shift, pause) !== undefined))
        yield {
          path: [...path, 'breaks', i],
          wanted: 'a break inside a shift',
          seen: `"${saySpan(pause)}"`,
        };
    for (const shift of calendar.hours)
      if (workingMinutes(shift, calendar.breaks) === 0)
        yield {
          path: [...path, 'breaks'],
          wanted: 'breaks that leave working time in each shift',
          seen: `none left in ${saySpan(shift)}`,
        };
  }
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
function overlapping(calendar: CalendarSpec): ClockSpan[] | undefined {
  const week = weekShifts(calendar).sort((a, b) => a.start - b.start),
    [first] = week;
  if (first === undefined) return undefined;
  for (const [i, { shift, start }] of week.entries()) {
    const next = week[i + 1] ?? { ...first, start: first.start + WEEK };
    if (start + lengthOf(shift) > next.start) return [shift, next.shift];
  }
  return undefined;
}

const saySpan = ({ startMin, endMin }: ClockSpan): string => `${sayClock(startMin)}-${sayClock(endMin)}`;
