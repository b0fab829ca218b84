import type { Model } from '../../../flow/model/model.js';
import { STOCK } from '../../../flow/model/resources.js';

/** Steps of a route at most, so that those of a sub-assembly stand between two of what it joins. */
const MOST_STEPS = 10_000;

/** By step: its place along the way to shipping; what is done to a sub-assembly comes ahead of its join. */
export function orderOfSteps(model: Model): Float64Array {
  const { steps, routes } = model,
    order = Float64Array.from({ length: steps.count }, (_, step) => step),
    joins = joiningSteps(model);
  const place = (step: number, depth = 0, unit = 1 / MOST_STEPS): number => {
    const route = steps.route[step] ?? 0,
      joinsAt = joins.get(route),
      last = (routes.firstStep[route + 1] ?? 0) - 1;
    // A sub-assembly of nothing, or, deeper than there are routes, of itself.
    if (route === 0 || joinsAt === undefined || step > last || depth > routes.count) return step;
    return place(joinsAt, depth + 1, unit / MOST_STEPS) - (last - step + 1) * unit;
  };
  return order.map((step) => place(step));
}

/** By route of a sub-assembly: the first step at which it joins. */
function joiningSteps({ steps, routes, resources }: Model): Map<number, number> {
  const joins = new Map<number, number>(),
    note = (route: number, step: number): void => {
      if (route > 0 && !joins.has(route)) joins.set(route, step);
    };
  for (let step = 0; step < steps.count; step++) {
    for (let n = steps.needStart[step] ?? 0; n < (steps.needStart[step + 1] ?? 0); n++) {
      const resource = steps.needResource[n] ?? -1;
      if (resources.kind[resource] === STOCK) note(routes.stock.indexOf(resource), step);
    }
    for (let n = steps.ownStart[step] ?? 0; n < (steps.ownStart[step + 1] ?? 0); n++)
      note(steps.ownRoute[n] ?? -1, step);
  }
  return joins;
}
