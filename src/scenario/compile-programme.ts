import { RELEASE_ARRIVALS, RELEASE_SATURATED, RELEASE_TIMES, UNLIMITED, type Model } from '../flow/model.js';
import type { CalendarBook } from './calendar-book.js';
import { NO_DRAW, type Draws } from './compile-draws.js';
import type { Names } from './compile-names.js';
import { compileOrders } from './compile-orders.js';
import { releaseDays, releaseTimes } from './compile-release.js';
import type { LaidRoutes } from './compile-route.js';
import { releaseSite, type RunSpan } from './compile-span.js';
import type { Scenario } from './scenario.js';
import { orderCounts } from './scenario-orders.js';

const RELEASE = { rate: RELEASE_TIMES, interval: RELEASE_ARRIVALS, saturated: RELEASE_SATURATED } as const;

/** How units are released and when the run ends. Where the run ends before all are released, `times` is shorter than `quantity`. */
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
