import { z } from 'zod';
import { CLOCK, clockOf, DATE, isDate } from './quantity.js';
import type { Failure, Moment, Outage } from './scenario-failures.js';
import { keys, name, oneOrMore, word } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';

/** The key `failures` of a station. */
export function failuresSchema(time: TimeSchema) {
  const failure = keys(
    {
      every: time.describe(
        'Time from one repair to the next failure. Example: { exponential: { mean: 60 h } }',
      ),
      by: word('operating time', 'calendar time')
        .default('operating time')
        .describe(
          'How `every` is counted: `operating time`, the minutes in which the place is working, in changeover, settling or in process (default); or `calendar time`, by the clock, in use or not.',
        ),
      repair: time.describe('Time of one repair. Example: { mean: 4 h, cv: 0.8 }'),
      hours: name('the name of a calendar')
        .optional()
        .describe(
          'When repairs go on: a calendar; they stop outside it and go on. Default: day and night. Example: days',
        ),
    },
    'a failure: a map with the keys every and repair',
  ).transform((f): Failure => ({ every: f.every, by: f.by, repair: f.repair, hours: f.hours }));
  return oneOrMore(failure, 'a failure { every: ..., repair: ... }, or a list of them').describe(
    'How the equipment fails: each place has its own; that of a station with lots fails as a whole. What goes on is broken off and taken up after the repair with what was left; its crew stays with it. Several ways to fail are a list; a place is up when none of them holds it down. Default: never. Example: { every: { exponential: { mean: 60 h } }, repair: { mean: 4 h, cv: 0.8 } }',
  );
}

const MOMENT_WANTED = 'a day, such as "2027-08-09", or a day and a clock time, such as "2027-08-09 06:00"';
const moment = z
  .string({ error: MOMENT_WANTED })
  .refine((text) => momentOf(text) !== undefined, { error: MOMENT_WANTED, abort: true })
  .transform((text) => momentOf(text)!);

function momentOf(text: string): Moment | undefined {
  const [day = '', clock, ...more] = text.trim().split(/ +/);
  if (more.length > 0 || !DATE.test(day) || !isDate(day)) return undefined;
  if (clock === undefined) return { day, minute: undefined };
  const minute = CLOCK.test(clock) ? clockOf(clock) : undefined;
  return minute === undefined ? undefined : { day, minute };
}

const names = (what: string) => oneOrMore(name(what), `${what}, or a list of them`);

/** The top-level key `outages`. */
export const outagesSchema = z.array(
  keys(
    {
      stations: names('the name of a station')
        .optional()
        .describe('Stations of which all places are down; of one site. Example: [colour booth]'),
      site: name('the name of a site')
        .optional()
        .describe('Instead of `stations`: all stations of this site. Example: coachworks'),
      lanes: names('the name of a lane')
        .optional()
        .describe(
          'Lanes from which no truck departs in this time; those under way drive on. Example: [coachworks to final plant]',
        ),
      from: moment.describe(
        'First day, or day and clock time, in the zone of the site (of lanes alone: of the site that the first one leaves). Example: 2027-08-09',
      ),
      to: moment.describe(
        'Last day, which belongs to the outage, or day and clock time of its end. Example: 2027-08-20',
      ),
      note: z
        .string({ error: 'a text' })
        .optional()
        .describe('What it is, shown on the report. Example: new paint line'),
    },
    'an outage: a map with the keys stations (or site, or lanes), from and to',
  )
    .superRefine((o, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      if (o.stations !== undefined && o.site !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['site'],
          message: 'either stations or a site',
          params: { seen: 'both' },
        });
      if (o.stations === undefined && o.site === undefined && o.lanes === undefined)
        context.addIssue({
          code: 'custom',
          path: [],
          message: 'what is down: stations, a site or lanes',
          params: { seen: 'none of them' },
        });
    })
    .transform(
      (o): Outage => ({
        stations: o.stations ?? [],
        site: o.site,
        lanes: o.lanes ?? [],
        from: o.from,
        to: o.to,
        note: o.note,
      }),
    ),
  { error: 'a list of outages, such as [{ stations: [colour booth], from: 2027-08-09, to: 2027-08-20 }]' },
);
