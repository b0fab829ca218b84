import type { Overtime, OvertimeRule, Shutdown } from '../types/calendars.js';
import { z } from 'zod';
import { isDate, weekdaysOf } from '../values/quantity.js';

import { clockSpan, date, keys, name, oneOrMore, spell, whole, word } from '../values/keys.js';

const DAYS_WANTED = 'weekdays, such as "Mon-Fri", "Mon-Thu, Sat" or "every day"';
const note = z.string({ error: 'a text' }).optional();

const weekday = z
  .string({ error: DAYS_WANTED })
  .refine((text) => weekdaysOf(text) !== undefined, { error: DAYS_WANTED, abort: true })
  .transform((text) => weekdaysOf(text)!);
/** Weekdays, 1 = Monday, each once and in order. */
export const weekdays = oneOrMore(weekday, DAYS_WANTED).transform((lists) =>
  [...new Set(lists.flat())].sort((a, b) => a - b),
);

const spanOf = (text: string): [string, string] => {
  const [from = '', to = from, ...more] = text.split(' to ').map((day) => day.trim());
  return more.length > 0 ? ['', ''] : [from, to];
};
const HOLIDAY_WANTED = 'a day or a span of days, such as "2027-05-31" or "2027-07-12 to 2027-07-30"';
const END_WANTED = 'a span of days whose end is not before its start';
/** `2027-05-31` or `2027-07-12 to 2027-07-30`. */
export const daySpan = z
  .string({ error: HOLIDAY_WANTED })
  .refine((text) => spanOf(text).every(isDate), { error: HOLIDAY_WANTED, abort: true })
  .transform((text) => ({ from: spanOf(text)[0], to: spanOf(text)[1] }))
  .refine((span) => span.from <= span.to, { error: END_WANTED });

const shutdown = z.union(
  [
    daySpan.transform((span): Shutdown => ({ ...span, note: undefined })),
    keys(
      {
        from: date.describe('First day off. Example: 2027-07-12'),
        to: date.describe('Last day off. Example: 2027-07-30'),
        note: note.describe('What for, shown on the report. Example: new oven'),
      },
      'a shutdown: a map with the keys from and to',
    )
      .refine((span) => span.from <= span.to, { error: 'a day not before the first', path: ['to'] })
      .transform((s): Shutdown => ({ from: s.from, to: s.to, note: s.note })),
  ],
  { error: `${HOLIDAY_WANTED}, or { from: 2027-07-12, to: 2027-07-30, note: new oven }` },
);
export const shutdowns = z
  .array(shutdown, { error: `a list, each entry ${HOLIDAY_WANTED}` })
  .default([])
  .describe(
    'Planned shutdowns: days off like holidays, but listed on the report. Default: none. ' +
      'Example: [{ from: 2027-07-12, to: 2027-07-30, note: new oven }]',
  );

const rule = keys(
  {
    'units behind': whole(1).describe('Worked when at least so many units are due but not out. Example: 3'),
    'lead time': spell.describe(
      'A unit is due so long after its planned release, by the clock, nights and weekends ' +
        'included. Example: 12 days',
    ),
    at: name('the name of a step')
      .optional()
      .describe('Out means past this step of the route. Default: shipped (or scrapped). Example: dress up'),
  },
  'a rule: a map with the keys units behind and lead time, such as { units behind: 3, lead time: 12 days }',
);

const overtimeEntry = keys(
  {
    hours: oneOrMore(clockSpan, 'a list of extra hours, such as ["15:00-17:00"]').describe(
      'The extra hours. Those that begin where a shift ends (or end where one begins) belong to ' +
        'that shift; others are a shift of their own. Example: ["15:00-17:00"]',
    ),
    on: weekdays
      .optional()
      .describe(
        'Weekdays with these hours; `Sat` for Saturday work. Default: the working days of the ' +
          'calendar. Example: Mon-Thu',
      ),
    from: date.optional().describe('First day. Default: the start of the programme. Example: 2027-06-07'),
    to: date.optional().describe('Last day. Default: the end of the programme. Example: 2027-07-02'),
    when: rule
      .optional()
      .describe(
        'Worked only when this rule asks for it. Default: worked on all these days. Example: { units ' +
          'behind: 3, lead time: 12 days }',
      ),
    decided: word('weekly', 'daily')
      .optional()
      .describe(
        'When the rule is looked at: `weekly`, at the start of the first shift of each week ' +
          '(default), or `daily`, of each day.',
      ),
    note: note.describe(
      'A remark; that of a rule is shown on the report. Example: to catch up after the move',
    ),
  },
  'overtime: a map with the key hours, such as { from: 2027-06-07, to: 2027-07-02, hours: ["15:00-17:00"] }',
)
  .superRefine((o, context) => {
    if (context.issues.length > 0) return; // misspelt keys first
    if (o.decided !== undefined && o.when === undefined)
      context.addIssue({
        code: 'custom',
        path: ['decided'],
        message: 'a rule `when` that is decided; overtime without one is always worked',
        params: { seen: o.decided },
      });
    if (o.from !== undefined && o.to !== undefined && o.from > o.to)
      context.addIssue({ code: 'custom', path: ['to'], message: `a day not before the first, ${o.from}` });
  })
  .transform(
    (o): Overtime => ({
      hours: o.hours,
      on: o.on,
      from: o.from,
      to: o.to,
      note: o.note,
      when:
        o.when &&
        ({
          behind: o.when['units behind'],
          leadTimeMin: o.when['lead time'],
          at: o.when.at,
          decided: o.decided ?? 'weekly',
        } satisfies OvertimeRule),
    }),
  );

export const overtime = z
  .array(overtimeEntry, { error: 'a list of extra hours, such as [{ on: Sat, hours: ["06:00-12:00"] }]' })
  .default([])
  .describe(
    'Hours beyond the usual ones: on given days, or when units are behind. Units are not ' +
      'released in them, and they make no working day of a day off; they are not worked on ' +
      'holidays and in shutdowns. Law, agreements and licensed practice limit overtime. Default: ' +
      'none. Example: [{ from: 2027-06-07, to: 2027-07-02, on: Mon-Thu, hours: ["15:00-17:00"] }, ' +
      '{ on: Sat, hours: ["06:00-12:00"], when: { units behind: 3, lead time: 12 days } }]',
  );
