import type { Model } from '../flow/model.js';
import type { CalendarBook } from './calendar-book.js';
import { dayNumber } from './calendar-date.js';
import { column } from './compile-columns.js';
import { NO_DRAW, type Draws } from './compile-draws.js';
import { siteOf, type Names } from './compile-names.js';
import type { RunSpan } from './compile-span.js';
import type { DeliveryDates, DeliveryRhythm, Supply } from './scenario-supplies.js';
import type { Scenario } from './scenario.js';

/** Supplies, called last so that their draws leave those of all else alone: `name/lead time`, `name/late`, `name/late by`. */
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
