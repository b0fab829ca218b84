import { z } from 'zod';
import { zone } from '../calendar/zone.js';
import type { ReadTable } from '../file/csv.js';
import type { Finding } from '../types/problem.js';
import type { Programme } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import { keys, named } from '../values/keys.js';
import { clock, date, duration, spell, whole, word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { arrivalsSchema, releaseAtTimes } from './arrivals.js';
import { mixSchema } from './options.js';
import { orderKeys, readOrders } from './orders.js';
import { phasesOf, rate } from './rates.js';

/** A programme before its defaults from elsewhere: its zone may come from the first site. */
export type ProgrammeRead = Omit<Programme, 'zone'> & { readonly zone: string | undefined };

/** Start of runs that name no date. */
const NO_DATE = '2001-01-01';

/** The warm-up is found (White 1997). */
const BY_MSER = 'mser-5';

export function programmeSchema(time: TimeSchema, readTable: ReadTable) {
  return keys(
    {
      start: date
        .optional()
        .describe(
          `The first day. Needed with \`rate\` and \`until\`; default ${NO_DATE} for steady-state runs ` +
            'and drawn arrivals. Example: 2027-03-01',
        ),
      'start time': clock
        .optional()
        .describe(
          'When the run starts on the first day, by the clock of the zone of the programme; what the rate ' +
            'would have released on that day before it is not released. Default: midnight. ' +
            'Example: "14:00"',
        ),
      zone: zone
        .optional()
        .describe(
          'The time zone of the dates and weeks of the programme. Default: that of the first site. ' +
            'Example: Europe/Oslo',
        ),
      quantity: whole(1, 10_000_000)
        .optional()
        .describe(
          'Units in all, those of the opening included; the run ends when the last has been shipped or ' +
            'scrapped. Default: the units of the build list, if there is one; units beyond the list are ' +
            'drawn. Leave it out for a steady-state run. Example: 420',
        ),
      rate: rate.optional(),
      arrivals: arrivalsSchema(time),
      until: date
        .optional()
        .describe(
          'The run ends at the start of this day at the latest, with whatever has been shipped by ' +
            'then. Example: 2028-12-31',
        ),
      options: named(mixSchema, 'options, such as { colour: { red: 70 %, white: 30 % }, stripe: 35 % }')
        .default({})
        .describe(
          'What differs between units. Each option has values with shares that add up to 100 %; a ' +
            'single chance makes a yes or no option. Example: { colour: { red: 70 %, white: 20 %, lime: ' +
            '10 % }, stripe: 35 % }',
        ),
      ...orderKeys,
      length: spell
        .optional()
        .describe(
          'For a steady-state run (no quantity): how long to observe after the warm-up. Example: 5000 h',
        ),
      'warm up': z
        .union([word(BY_MSER), duration], { error: `a time such as 500 h, or the word ${BY_MSER}` })
        .optional()
        .describe(
          'For a steady-state run: time before observation begins, for the line to fill; `mser-5`: ' +
            'determined by the rule of that name from replications run beforehand. Default: 0 min. ' +
            'Example: 500 h',
        ),
    },
    'a programme: a map with rate or arrivals, and quantity or length',
  )
    .superRefine((p, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const { list, findings } = readOrders(p, readTable);
      for (const { path, wanted, ...params } of findings)
        context.addIssue({ code: 'custom', path: path.slice(1), message: wanted, params });
      if (findings.length > 0) return;
      const wrong = (path: string[], message: string, seen?: string): void => {
        context.addIssue({ code: 'custom', path, message, params: { seen } });
      };
      const { arrivals } = p,
        isByClock = typeof arrivals === 'object' && arrivals.kind === 'at times';
      const isDated = list.some(({ release }) => release !== undefined),
        hasList = p.buildList !== undefined;
      const needsRate =
        list.length < (p.quantity ?? (hasList ? 0 : Infinity)) ||
        list.some(({ release, at }) => release === undefined && at === undefined);
      if (p.rate !== undefined && p.arrivals !== undefined)
        wrong([], 'exactly one of rate and arrivals', 'both');
      if (p.rate === undefined && p.arrivals === undefined && needsRate)
        wrong(
          [],
          hasList
            ? 'a rate or arrivals for units that have no day of release'
            : 'exactly one of rate and arrivals',
          'neither',
        );
      if (isDated && arrivals !== undefined && !isByClock)
        wrong(['arrivals'], 'a rate, clock times, or nothing, where units have a day of release', 'arrivals');
      if (p.quantity !== undefined && p.quantity < list.length)
        wrong(
          ['quantity'],
          `at least ${list.length}, the units of the opening and the build list`,
          String(p.quantity),
        );
      if (p.dueAfter !== undefined && p.arrivals === 'saturated')
        wrong(
          ['due after'],
          'units that are released by a rate or at times; a saturated source has no release to count from',
          'arrivals: saturated',
        );
      if (hasList && p.length !== undefined)
        wrong(['length'], 'a build list only without a length, since it is a quantity', 'both');
      if (
        p.start === undefined &&
        list.some(({ release, due }) => release !== undefined || due !== undefined)
      )
        wrong(['start'], 'missing; should be a first day, such as "2027-03-01", where units have dates');
      if (!hasList && p.quantity === undefined && p.length === undefined && p.until === undefined)
        wrong(
          [],
          'an end of the run: a quantity, a date until, or for a steady-state run a length',
          'none of them',
        );
      if (p.quantity !== undefined && p.length !== undefined)
        wrong(['length'], 'either a quantity or a length, not both', 'both');
      if (p.warmUp !== undefined && p.length === undefined)
        wrong(['warm up'], 'a warm up only together with a length', 'no length');
      if (
        p.start === undefined &&
        p.length === undefined &&
        (p.rate !== undefined || isByClock || p.until !== undefined)
      )
        wrong(
          ['start'],
          'missing; should be a first day, such as "2027-03-01", with ' +
            (isByClock ? 'clock times' : 'rate or until'),
        );
    })
    .transform((p): ProgrammeRead => {
      const start = p.start ?? NO_DATE;
      const { list } = readOrders(p, readTable);
      return {
        start,
        startMin: p.startTime === 0 ? undefined : p.startTime,
        zone: p.zone,
        options: p.options,
        release:
          p.arrivals === 'saturated'
            ? { kind: 'saturated' }
            : p.arrivals !== undefined
              ? p.arrivals.kind === 'at times'
                ? releaseAtTimes(p.arrivals, start)
                : { kind: 'interval', interval: p.arrivals }
              : { kind: 'rate', phases: p.rate === undefined ? [] : phasesOf(p.rate, start) },
        quantity: p.quantity ?? (p.buildList === undefined ? undefined : list.length),
        until: p.until,
        lengthMin: p.length,
        warmUpMin: p.warmUp === BY_MSER ? 0 : (p.warmUp ?? 0),
        ...(p.warmUp === BY_MSER ? { findsWarmUp: true } : {}),
        orders: { list, dueAfterMin: p.dueAfter, replaceScrapped: p.replaceScrapped },
      };
    });
}

/** Dates of the programme in order. ISO dates compare as texts. */
export function* programmeFindings({ programme: { start, until } }: Scenario): Iterable<Finding> {
  if (until !== undefined && until <= start)
    yield { path: ['programme', 'until'], wanted: `a day after the start, ${start}`, seen: `"${until}"` };
}
