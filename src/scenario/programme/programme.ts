import type { Programme, RatePhase } from '../types/programme.js';
import type { Finding } from '../types/problem.js';
import { z } from 'zod';
import { RELEASE_ARRIVALS, RELEASE_SATURATED, RELEASE_TIMES, UNLIMITED } from '../../flow/model/model.js';
import type { Model } from '../../flow/model/model.js';
import type { CalendarBook } from '../calendar/book.js';
import { zone } from '../calendar/zone.js';
import type { ReadTable } from '../file/csv.js';

import type { Scenario } from '../types/scenario.js';
import { chance, date, duration, keys, named, spell, whole, word } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { NO_DRAW } from '../whole/draws.js';
import type { Draws } from '../whole/draws.js';
import type { Names } from '../whole/ids.js';
import type { LaidRoutes } from '../work/route.js';
import { compileOrders } from './build-order.js';
import { orderCounts, orderKeys, readOrders } from './orders.js';
import { phasesOf, rate } from './rates.js';
import { releaseDays, releaseTimes } from './release.js';
import { releaseSite } from './span.js';
import type { RunSpan } from './span.js';

/** A programme before its defaults from elsewhere: its zone may come from the first site. */
export type ProgrammeRead = Omit<Programme, 'zone'> & { readonly zone: string | undefined };

/** Start of runs that name no date. */
const NO_DATE = '2001-01-01';

const mix = z.union(
  [
    chance.transform((yes): Record<string, number> => ({ yes, no: 1 - yes })),
    named(chance, 'values with their shares').refine(
      (shares) => Math.abs(Object.values(shares).reduce((a, b) => a + b, 0) - 1) <= 1e-6,
      { error: 'shares that add up to 100 %', when: whenMap },
    ),
  ],
  {
    error:
      'values with their shares, such as { red: 70 %, white: 30 % }, or one chance for yes or no, ' +
      'such as 35 %',
  },
);
/** The sum is asked for only where each share could be read. */
function whenMap(payload: { value: unknown; issues: unknown[] }): boolean {
  return payload.issues.length === 0 && typeof payload.value === 'object' && payload.value !== null;
}

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
            'scrapped. Default: with a build list its units; what it goes beyond the list is drawn. ' +
            'Leave it out for a steady-state run. Example: 420',
        ),
      rate: rate.optional(),
      arrivals: z
        .union([word('saturated'), time], {
          error: 'the word saturated, or a time between units such as { exponential: { mean: 2 h } }',
        })
        .optional()
        .describe(
          'Instead of `rate`: the time between units, drawn anew for each; or `saturated`: a unit is ' +
            'always ready to enter. Example: { exponential: { mean: 2 h } }',
        ),
      until: date
        .optional()
        .describe(
          'The run ends at the start of this day at the latest, with whatever has been shipped by ' +
            'then. Example: 2028-12-31',
        ),
      options: named(mix, 'options, such as { colour: { red: 70 %, white: 30 % }, stripe: 35 % }')
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
          'For a steady-state run: time before observing begins, for the line to fill; `mser-5`: found ' +
            'by the rule of that name from ten replications that are run first. Default: 0 min. ' +
            'Example: 500 h',
        ),
    },
    'a programme: a map with rate or arrivals, and quantity or length',
  )
    .superRefine((p, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const wrong = (path: string[], message: string, seen?: string): void => {
        context.addIssue({ code: 'custom', path, message, params: { seen } });
      };
      const { list, findings } = readOrders(p, readTable);
      for (const { path, wanted, ...params } of findings)
        context.addIssue({ code: 'custom', path: path.slice(1), message: wanted, params });
      if (findings.length > 0) return;
      const isDated = list.some(({ release }) => release !== undefined),
        hasList = p['build list'] !== undefined;
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
      if (isDated && p.arrivals !== undefined)
        wrong(['arrivals'], 'a rate, or nothing, where units have a day of release', 'arrivals');
      if (p.quantity !== undefined && p.quantity < list.length)
        wrong(
          ['quantity'],
          `at least ${list.length}, the units of the opening and the build list`,
          String(p.quantity),
        );
      if (p['due after'] !== undefined && p.arrivals === 'saturated')
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
      if (p['warm up'] !== undefined && p.length === undefined)
        wrong(['warm up'], 'a warm up only together with a length', 'no length');
      if (p.start === undefined && p.length === undefined && (p.rate !== undefined || p.until !== undefined))
        wrong(['start'], 'missing; should be a first day, such as "2027-03-01", with rate or until');
    })
    .transform((p): ProgrammeRead => {
      const start = p.start ?? NO_DATE;
      const { list } = readOrders(p, readTable);
      return {
        start,
        zone: p.zone,
        options: p.options,
        release:
          p.arrivals === 'saturated'
            ? { kind: 'saturated' }
            : p.arrivals !== undefined
              ? { kind: 'interval', interval: p.arrivals }
              : { kind: 'rate', phases: p.rate === undefined ? [] : phasesOf(p.rate, start) },
        quantity: p.quantity ?? (p['build list'] === undefined ? undefined : list.length),
        until: p.until,
        lengthMin: p.length,
        warmUpMin: p['warm up'] === BY_MSER ? 0 : (p['warm up'] ?? 0),
        ...(p['warm up'] === BY_MSER ? { findsWarmUp: true } : {}),
        orders: { list, dueAfterMin: p['due after'], replaceScrapped: p['replace scrapped'] },
      };
    });
}

/**
 * Dates of the programme in order, and a release that reaches the end of the run. ISO dates compare as texts.
 */
export function programmeFindings({ programme }: Scenario): Finding[] {
  const { start, until, release, lengthMin } = programme;
  const found: Finding[] = [];
  if (until !== undefined && until <= start)
    found.push({
      path: ['programme', 'until'],
      wanted: `a day after the start, ${start}`,
      seen: `"${until}"`,
    });
  if (release.kind !== 'rate') return found;

  const { phases } = release,
    last = phases.at(-1);
  // Each unit has a day of release of its own, or stands on the floor.
  if (last === undefined) return found;
  phases.forEach(({ from }, i) => {
    const path = ['programme', 'rate', i, 'from'];
    const before = phases[i - 1]?.from;
    if (from === '') found.push({ path, wanted: 'missing; should be the first day of this rate' });
    else if (from < start)
      found.push({
        path,
        wanted: `a day not before the start of the programme, ${start}`,
        seen: `"${from}"`,
      });
    else if (before !== undefined && before !== '' && from <= before)
      found.push({ path, wanted: `a day after that of the rate before, ${before}`, seen: `"${from}"` });
  });
  const rests = ({ perDay, perWeek }: RatePhase): boolean => (perDay ?? perWeek) === 0;
  if (phases.every(rests) || (rests(last) && until === undefined && lengthMin === undefined)) {
    found.push({
      path: ['programme', 'rate'],
      wanted: 'a rate above 0 per day at last, so that the run ends',
      seen: '0',
    });
  }
  return found;
}

const RELEASE = { rate: RELEASE_TIMES, interval: RELEASE_ARRIVALS, saturated: RELEASE_SATURATED } as const;

/**
 * How units are released and when the run ends. Where the run ends before all are released, `times` is
 * shorter than `quantity`.
 */
export function compileProgramme(
  scenario: Scenario,
  names: Names,
  laid: LaidRoutes,
  book: CalendarBook,
  draws: Draws,
  span: RunSpan,
): Model['programme'] {
  const { release, quantity, warmUpMin, orders } = scenario.programme;
  const site = releaseSite(scenario),
    days = book.workingDays(site.calendar, site.zone);
  const byRate = releaseTimes(
    releaseDays(scenario, days, span),
    orderCounts(orders.list, quantity).byRate,
    Math.min(span.end, span.horizon),
  );
  const { columns, times } = compileOrders(scenario, names, laid, span, days, byRate);
  return {
    release: RELEASE[release.kind],
    times,
    intervalDraw: release.kind === 'interval' ? draws.add('programme/interval', release.interval) : NO_DRAW,
    orders: columns,
    quantity: quantity ?? UNLIMITED,
    end: span.end,
    warmUp: warmUpMin,
    bucketEdges: Float64Array.from(span.bucketEdges),
  };
}

/** Options with cumulative chances. Called first, so that the draw of option o (`option/<name>`) has id o. */
export function compileOptions(scenario: Scenario, draws: Draws): Model['options'] {
  return Object.entries(scenario.programme.options).map(([name, mix]) => {
    draws.chance(`option/${name}`);
    const weights = Object.values(mix);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    let sum = 0;
    const cumulative = Float64Array.from(weights, (weight) => (sum += weight) / total);
    cumulative[cumulative.length - 1] = 1;
    return { name, values: Object.keys(mix), cumulative };
  });
}
