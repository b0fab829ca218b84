import type { Finding } from '../types/problem.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import type { CalendarBook } from '../calendar/book.js';
import { dayNumber } from '../calendar/date.js';

import type { RunSpan } from '../programme/span.js';
import type { Scenario } from '../types/scenario.js';
import type { DeliveryDates, DeliveryRhythm, Reorder, Supply } from '../types/supplies.js';
import { chance, date, keys, name, spell, whole } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { column } from '../whole/columns.js';
import { NO_DRAW } from '../whole/draws.js';
import type { Draws } from '../whole/draws.js';
import { siteOf } from '../whole/ids.js';
import type { Names } from '../whole/ids.js';
import { own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';

const DELIVERIES = 'a list such as [{ on: 2027-03-08, lot: 12 }], or { lot: 10, every: 7 days }';

const dated = keys(
  {
    on: date.describe(
      'The day of the delivery: it is there when the working day of the site begins, or that of ' +
        'the next working day. Example: 2027-03-08',
    ),
    lot: whole(1).describe('Parts that come then. Example: 12'),
  },
  'a delivery: a map with the keys on and lot',
);
const rhythm = keys(
  {
    lot: whole(1).describe('Parts that come each time. Example: 10'),
    every: spell
      .refine((minutes) => minutes % MINUTES_PER_DAY === 0, {
        error: 'a number of whole days, such as 7 days',
      })
      .describe('Days from one delivery to the next, weekends counted. Example: 7 days'),
    from: date
      .optional()
      .describe('The first delivery. Default: the start of the programme. Example: 2027-03-08'),
    to: date
      .optional()
      .describe('No delivery after this day. Default: they go on to the end of the run. Example: 2028-06-30'),
  },
  DELIVERIES,
).transform(
  (r): DeliveryRhythm => ({
    kind: 'rhythm',
    lot: r.lot,
    everyDays: r.every / MINUTES_PER_DAY,
    from: r.from,
    to: r.to,
  }),
);

/** A bought-in part: a stock that is filled up in lots from outside. */
export function supplySchema(time: TimeSchema) {
  const reorder = keys(
    {
      level: whole(0).describe(
        'A lot is ordered when stock and lots on order, less the parts that units wait for, are at ' +
          'this level (plus the safety stock) or below. Example: 4',
      ),
      lot: whole(1).describe('Parts in a lot. Example: 8'),
      'lead time': time.describe(
        'From the order to the arrival of the lot, by the clock, drawn for each lot; a lot may ' +
          'overtake another. Example: { low: 10 days, high: 20 days }',
      ),
    },
    'reorder: a map with the keys level, lot and lead time',
  ).transform(
    (r): Omit<Reorder, 'safetyStock'> => ({
      kind: 'reorder',
      level: r.level,
      lot: r.lot,
      leadTime: r['lead time'],
    }),
  );
  const late = keys(
    {
      chance: chance.describe('The chance that a lot is late, for each lot by itself. Example: 10 %'),
      by: time.describe('How late it then is. Example: { low: 2 days, high: 10 days }'),
    },
    'late: a map with the keys chance and by',
  );
  return keys(
    {
      site: name('the name of a site').describe(
        'The site where the parts come in; steps of this site take them. Example: final plant',
      ),
      'at start': whole(0).default(0).describe('Parts in stock when the run starts. Default: 0. Example: 6'),
      reorder: reorder
        .optional()
        .describe('Lots are ordered by a reorder level. Example: { level: 4, lot: 8, lead time: 15 days }'),
      deliveries: z
        .union(
          [
            z
              .array(dated)
              .min(1, { error: 'at least one delivery' })
              .transform((dates): DeliveryDates => ({ kind: 'dates', dates })),
            rhythm,
          ],
          { error: DELIVERIES },
        )
        .optional()
        .describe(
          'Instead of `reorder`: lots by a plan, on dates or in a rhythm, whatever is in stock. ' +
            'Example: { lot: 10, every: 7 days, from: 2027-03-08 }',
        ),
      'safety stock': whole(0)
        .optional()
        .describe('Parts kept for bad days: added to the reorder level. Default: 0. Example: 3'),
      late: late
        .optional()
        .describe(
          'Lots that come later than planned. Default: none. Example: { chance: 10 %, by: { low: 2 ' +
            'days, high: 10 days } }',
        ),
    },
    'a supply: a map with site, and reorder or deliveries',
  )
    .superRefine((s, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const wrong = (path: string[], message: string, seen?: string): void => {
        context.addIssue({ code: 'custom', path, message, params: { seen } });
      };
      if ((s.reorder === undefined) === (s.deliveries === undefined))
        wrong([], 'exactly one of reorder and deliveries', s.reorder === undefined ? 'neither' : 'both');
      else if (s['safety stock'] !== undefined && s.reorder === undefined)
        wrong(
          ['safety stock'],
          'a safety stock only together with reorder; with deliveries raise at start, or the first lot',
        );
    })
    .transform(
      (s): Supply => ({
        site: s.site,
        atStart: s['at start'],
        late: s.late,
        // One of them is there: see above.
        order:
          s.reorder === undefined ? s.deliveries! : { ...s.reorder, safetyStock: s['safety stock'] ?? 0 },
      }),
    );
}

/**
 * Supplies that nothing takes, that are taken in another site, or whose deliveries are out of order with the
 * programme.
 */
export function supplyFindings(scenario: Scenario): Finding[] {
  return [...uses(scenario), ...plans(scenario)];
}

function uses(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario),
    used = new Set<string>(),
    found: Finding[] = [];
  for (const route of routesOf(scenario)) {
    for (const { path, step } of stepsOf(route)) {
      for (const [name, count] of Object.entries(step.parts)) {
        const supply = own(scenario.supplies, name),
          here = siteOf.get(step.at);
        if (supply === undefined) continue;
        used.add(name);
        if (count === 'own')
          found.push({
            path: [...path, 'parts', name],
            wanted: 'a number, since these parts come from a supply',
            seen: '"own"',
          });
        if (here !== supply.site)
          found.push({
            path: [...path, 'parts', name],
            wanted: `a step in site ${supply.site}, where this supply comes in`,
            seen: `"${step.name}", in site ${here}`,
            atKey: true,
          });
      }
    }
  }
  for (const name of Object.keys(scenario.supplies)) {
    if (!used.has(name))
      found.push({
        path: ['supplies', name],
        wanted: 'a step with this supply in its parts; no step has it',
        atKey: true,
      });
  }
  return found;
}

function plans({ supplies, programme: { start } }: Scenario): Finding[] {
  const found: Finding[] = [];
  const early = (path: Finding['path'], day: string): void => {
    if (day < start)
      found.push({ path, wanted: `a day not before the start of the programme, ${start}`, seen: `"${day}"` });
  };
  for (const [name, { order }] of Object.entries(supplies)) {
    const path = ['supplies', name, 'deliveries'];
    if (order.kind === 'dates')
      order.dates.forEach(({ on }, i) => {
        early([...path, i, 'on'], on);
      });
    if (order.kind !== 'rhythm') continue;
    const { from = start, to } = order;
    early([...path, 'from'], from);
    if (to !== undefined && to < from)
      found.push({
        path: [...path, 'to'],
        wanted: `a day not before the first delivery, ${from}`,
        seen: `"${to}"`,
      });
  }
  return found;
}

/**
 * Supplies, called last so that their draws leave those of all else alone: `name/lead time`, `name/late`,
 * `name/late by`.
 */
export function compileSupplies(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
  draws: Draws,
  span: RunSpan,
): Model['supplies'] {
  const rows = Object.entries(scenario.supplies).map(([name, { site, order, late }]) => {
    const by = late !== undefined && late.chance > 0 ? draws.add(`${name}/late by`, late.by) : NO_DRAW;
    return {
      order,
      by,
      resource: names.part(name),
      lead: order.kind === 'reorder' ? draws.add(`${name}/lead time`, order.leadTime) : NO_DRAW,
      chance: late?.chance ?? 0,
      late: by === NO_DRAW ? NO_DRAW : draws.chance(`${name}/late`),
      plan: order.kind === 'reorder' ? [] : deliveries(order, site, scenario, book, span),
    };
  });
  return {
    count: rows.length,
    resource: column(rows, (row) => row.resource),
    level: column(rows, ({ order }) => (order.kind === 'reorder' ? order.level + order.safetyStock : -1)),
    lot: column(rows, ({ order }) => (order.kind === 'dates' ? 0 : order.lot)),
    leadDraw: column(rows, (row) => row.lead),
    lateChance: Float64Array.from(rows, (row) => row.chance),
    lateDraw: column(rows, (row) => row.late),
    lateByDraw: column(rows, (row) => row.by),
    planTimes: rows.map(({ plan }) => Float64Array.from(plan, ({ at }) => at)),
    planLots: rows.map(({ plan }) => column(plan, ({ lot }) => lot)),
  };
}

/** Deliveries in order of time: each with the first working minute of the site on its date or after it. */
function deliveries(
  order: DeliveryDates | DeliveryRhythm,
  siteName: string,
  scenario: Scenario,
  book: CalendarBook,
  span: RunSpan,
): { at: number; lot: number }[] {
  const site = siteOf(scenario, siteName),
    days = book.workingDays(site.calendar, site.zone),
    plan: { at: number; lot: number }[] = [];
  const wanted =
    order.kind === 'dates'
      ? order.dates.map(({ on, lot }) => ({ day: dayNumber(on), lot })).sort((a, b) => a.day - b.day)
      : rhythmDays(order, span);
  let next = 0;
  for (const { day, lot } of wanted) {
    while (next < days.length && days[next].day < day) next++;
    const at = days[next]?.windows[0].start;
    if (at !== undefined && at < span.horizon) plan.push({ at, lot });
  }
  return plan;
}

function rhythmDays(
  { lot, everyDays, from, to }: DeliveryRhythm,
  { startDay, endDay }: RunSpan,
): { day: number; lot: number }[] {
  const days: { day: number; lot: number }[] = [],
    last = to === undefined ? endDay : Math.min(endDay, dayNumber(to));
  for (let day = from === undefined ? startDay : dayNumber(from); day <= last; day += everyDays)
    days.push({ day, lot });
  return days;
}

/** A plan of deliveries is known no further than the calendars are. */
export const hasPlan = (supplies: Readonly<Record<string, Supply>>): boolean =>
  Object.values(supplies).some(({ order }) => order.kind !== 'reorder');
