import { z } from 'zod';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayNumber } from '../calendar/date.js';
import { startOf } from '../calendar/days.js';
import type { Compilation } from '../lookup/compilation.js';
import { siteOf } from '../lookup/ids.js';
import type { RunSpan } from '../programme/span.js';
import type { DeliveryDates, DeliveryRhythm, Supply } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { date, spell, whole } from '../values/scalars.js';

const DELIVERIES = 'a list such as [{ on: 2027-03-08, lot: 12 }], or { lot: 10, every: 7 days }';

const dated = keys(
  {
    on: date.describe(
      'The day of the delivery: it is there when the working day of the site begins, or that of ' +
        'the next working day. Example: 2027-03-08',
    ),
    lot: whole(1).describe('Parts in this delivery. Example: 12'),
  },
  'a delivery: a map with the keys on and lot',
);
const rhythm = keys(
  {
    lot: whole(1).describe('Parts in each delivery. Example: 10'),
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
      .describe('No delivery after this day. Default: until the end of the run. Example: 2028-06-30'),
  },
  DELIVERIES,
);

/** Lots by a plan: on dates, or every so many days. */
export const deliveriesSchema = z.union(
  [
    z
      .array(dated)
      .min(1, { error: 'at least one delivery' })
      .transform((dates): DeliveryDates => ({ kind: 'dates', dates })),
    rhythm.transform(
      ({ lot, every, from, to }): DeliveryRhythm => ({
        kind: 'rhythm',
        lot,
        everyDays: every / MINUTES_PER_DAY,
        from,
        to,
      }),
    ),
  ],
  { error: DELIVERIES },
);

/** Deliveries before the programme, and plans that end before they begin. */
export function* deliveryFindings({ supplies, programme: { start } }: Scenario): Iterable<Finding> {
  for (const [name, { order }] of Object.entries(supplies)) {
    if (order.kind === 'reorder') continue;
    const path = ['supplies', name, 'deliveries'],
      days =
        order.kind === 'dates'
          ? order.dates.map(({ on }, i) => ({ day: on, at: [i, 'on'] }))
          : [{ day: order.from ?? start, at: ['from'] }];
    for (const { day, at } of days)
      if (day < start)
        yield {
          path: [...path, ...at],
          wanted: `a day not before the start of the programme, ${start}`,
          seen: `"${day}"`,
        };
    if (order.kind === 'dates' || order.to === undefined) continue;
    const { from = start, to } = order;
    if (to < from)
      yield {
        path: [...path, 'to'],
        wanted: `a day not before the first delivery, ${from}`,
        seen: `"${to}"`,
      };
  }
}

interface Delivery {
  /** Minutes since the programme's start. */
  readonly at: number;
  readonly lot: number;
}

/** Deliveries in order of time: each with the first working minute of the site on its date or after it. */
export function plannedDeliveries(
  { order, site: name }: Supply,
  { scenario, book, span }: Compilation,
): Delivery[] {
  if (order.kind === 'reorder') return [];
  const site = siteOf(scenario, name),
    days = book.workingDays(site.calendar, site.zone).values(),
    plan: Delivery[] = [];
  const wanted =
    order.kind === 'dates'
      ? order.dates.map(({ on, lot }) => ({ day: dayNumber(on), lot })).sort((a, b) => a.day - b.day)
      : rhythmDays(order, span);
  let next = days.next();
  for (const { day, lot } of wanted) {
    while (next.done !== true && next.value.day < day) next = days.next();
    if (next.done === true) break;
    const at = startOf(next.value);
    if (at < span.horizon) plan.push({ at, lot });
  }
  // A rhythm without an end goes on behind the run: who waits for parts there will get some.
  if (order.kind === 'rhythm' && order.to === undefined)
    plan.push({ at: span.horizon + MINUTES_PER_DAY, lot: order.lot });
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
