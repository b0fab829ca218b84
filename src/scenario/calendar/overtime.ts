import { z } from 'zod';
import { saySeen } from '../file/problem.js';
import { at } from '../lookup/columns.js';
import type { CalendarSpec, Overtime } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, oneOrMore, together } from '../values/keys.js';
import { clockSpan, date, text, weekdays, word } from '../values/scalars.js';
import { weekOf } from './days.js';
import { ruleSchema, whyNotDue } from './overtime-rules.js';

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
    when: ruleSchema
      .optional()
      .describe(
        'Worked only when this rule asks for it. Default: worked on all these days. Example: { units ' +
          'behind: 3, lead time: 12 days }',
      ),
    decided: word('weekly', 'daily')
      .optional()
      .describe(
        'When the rule is checked: `weekly`, at the start of the first shift of each week ' +
          '(default), or `daily`, at that of each day.',
      ),
    note: text
      .optional()
      .describe('A remark; that of a rule is shown on the report. Example: to catch up after the move'),
  },
  'overtime: a map with the key hours, such as { from: 2027-06-07, to: 2027-07-02, hours: ["15:00-17:00"] }',
)
  .superRefine(
    together(({ from, to, when, decided }, wrong) => {
      if (decided !== undefined && when === undefined)
        wrong(['decided'], 'a rule `when` that is decided; overtime without one is always worked', decided);
      if (from !== undefined && to !== undefined && from > to)
        wrong(['to'], `a day not before the first, ${from}`, saySeen(to));
    }),
  )
  .transform(
    ({ hours, on, from, to, note, when, decided = 'weekly' }): Overtime => ({
      hours,
      on,
      from,
      to,
      note,
      when: when && {
        behind: when.unitsBehind,
        leadTimeMin: when.leadTime,
        dueWithinMin: when.dueWithin,
        at: when.at,
        decided,
      },
    }),
  );

export const overtime = z
  .array(overtimeEntry, { error: 'a list of extra hours, such as [{ on: Sat, hours: ["06:00-12:00"] }]' })
  .default([])
  .describe(
    'Extra hours, on given days or when units are behind. They release no units and do not turn a ' +
      'day off into a working day; they are not worked on holidays or in shutdowns. Law, agreements ' +
      'and licensed practice limit overtime. Default: none. Example: [{ from: 2027-06-07, to: ' +
      '2027-07-02, on: Mon-Thu, hours: ["15:00-17:00"] }, { on: Sat, hours: ["06:00-12:00"], when: { ' +
      'units behind: 3, lead time: 12 days } }]',
  );

/** Overtime in the usual hours or twice, rules that know no due date. */
export function* overtimeFindings({ calendars, programme }: Scenario): Iterable<Finding> {
  for (const [name, calendar] of Object.entries(calendars)) {
    const usual = minutesOf(calendar),
      extra = calendar.overtime.map((entry) => minutesOf({ ...entry, on: entry.on ?? calendar.on }));
    for (const [i, entry] of calendar.overtime.entries()) {
      const path = ['calendars', name, 'overtime', i],
        here = at(extra, i);
      if (meet(here, usual))
        yield {
          path: [...path, 'hours'],
          wanted: 'hours outside the shifts of the calendar',
          seen: 'some inside',
        };
      const before = calendar.overtime
        .slice(0, i)
        .findIndex((other, o) => sameDates(entry, other) && meet(here, at(extra, o)));
      if (before >= 0)
        yield {
          path: [...path, 'hours'],
          wanted:
            'hours that no earlier entry of overtime has on the same days; ' +
            `entry ${before + 1} has some of them`,
          seen: 'the same hours',
        };
      const fault = entry.when && whyNotDue(programme, entry.when);
      if (fault !== undefined) yield { path: [...path, 'when'], ...fault };
    }
  }
}

const minutesOf = ({ on, hours }: Pick<CalendarSpec, 'on' | 'hours'>): Uint8Array =>
  weekOf({ on, hours, breaks: [] });
const meet = (a: Uint8Array, b: Uint8Array): boolean => a.some((minute, i) => minute === 1 && b[i] === 1);

const sameDates = (a: Overtime, b: Overtime): boolean =>
  (a.from ?? '') <= (b.to ?? '9') && (b.from ?? '') <= (a.to ?? '9');
