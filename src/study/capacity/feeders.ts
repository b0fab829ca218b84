import type { Model } from '../../flow/model/model.js';
import { remembered } from '../../scenario/values/raw.js';
import type { Demand } from './demand.js';
import type { Limit, Use } from './limits.js';

/** Each feeder is as fast as the slowest of what it uses. */
export function feederLimits({ routes }: Model, asks: Demand, uses: readonly Use[]): Limit[] {
  const [first] = uses,
    ofRoute = new Map<number, Use[]>();
  for (const use of uses)
    for (const route of use.byRoute.keys()) remembered(ofRoute, route, () => []).push(use);
  if (uses.length === 0) return [];
  return routes.names.slice(1).map((name, i) => {
    const route = i + 1,
      minutes = (use: Use): number => use.byRoute.get(route) ?? 0;
    // What asks for nothing of a route is never slower than another.
    const slowest = (ofRoute.get(route) ?? []).reduce(
      (worst, use) => (minutes(use) * worst.available > minutes(worst) * use.available ? use : worst),
      first,
    );
    return {
      kind: 'feeder',
      name,
      site: slowest.site,
      visits: asks.started[route],
      minutes: minutes(slowest),
      available: slowest.available,
    };
  });
}
