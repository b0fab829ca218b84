import { z } from 'zod';
import { daySpan, overtime, shutdowns, weekdays } from './schema-overtime.js';
import { clockSpan, keys, oneOrMore } from './schema-quantity.js';
import type { CalendarSpec } from './scenario.js';

const HOURS_WANTED = 'a list of shifts, such as ["06:00-14:30"]';
const HOLIDAY_WANTED = 'a day or a span of days, such as "2027-05-31" or "2027-07-12 to 2027-07-30"';

export const calendarSchema = keys(
  {
    hours: oneOrMore(clockSpan, HOURS_WANTED).describe(
      'The shifts of a working day. An end at or before the start is on the next day, so "22:00-06:00" is a night shift and belongs to the day it starts on. Example: ["06:00-14:30", "14:30-23:00"]',
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
        'Breaks inside the shifts; work stops and goes on after them. Default: none. Example: ["09:30-09:45", "12:00-12:30"]',
      ),
    holidays: z
      .array(daySpan, { error: `a list, each entry ${HOLIDAY_WANTED}` })
      .default([])
      .describe(
        'Days off, single or as spans that include both ends. Default: none. Example: [2027-05-31, "2027-07-12 to 2027-07-30"]',
      ),
    shutdowns,
    overtime,
  },
  'a calendar: a map with the key hours',
).transform((calendar): CalendarSpec => calendar);
