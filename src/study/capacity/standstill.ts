import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { STOCK } from '../../flow/model/resources.js';
import { isInKit } from '../../flow/model/steps.js';
import { rowsOf } from '../lists.js';
import { sum } from '../statistics/sums.js';
import { spotsOf } from './spots.js';

/**
 * Stations that may come to stand still, in words: those who wait in their places for parts can have all of
 * them, and these parts, or what goes into them, are built there too.
 */
export function mayStandStill(model: Model): string[] {
  const { stations, steps, routes, resources } = model;
  return stations.names.flatMap((station, s) => {
    // By route: how many of it can wait there at once.
    const waiting = new Map<number, number>(),
      parts = new Set<string>();
    for (const step of spotsOf(model).stepsAt[s]) {
      if (steps.asksAhead[step] === 1 || isInKit(model, step)) continue;
      for (const row of rowsOf(steps.needStart, step)) {
        const part = steps.needResource[row],
          route = steps.route[step];
        if (resources.kind[part] !== STOCK || !isBuiltAt(model, part, s)) continue;
        waiting.set(route, routes.stock[route] < 0 ? UNLIMITED : routes.target[route]);
        parts.add(resources.names[part]);
      }
    }
    if (waiting.size === 0 || sum(waiting.values()) < stations.places[s]) return [];
    const takers = Array.from(waiting.keys(), (route) => (route === 0 ? 'units' : routes.names[route]));
    return [
      `${station} may stand still: ${takers.join(', ')} can wait in all of its places for ` +
        `${[...parts].join(', ')}, which are built there; let them wait outside (full kit, wait for parts)`,
    ];
  });
}

/** Whether a part, or one that goes into it, takes a place of the station. Feeders have no rings. */
function isBuiltAt(model: Model, part: number, station: number): boolean {
  const { steps, routes } = model,
    route = spotsOf(model).routeOf[part];
  if (route < 0) return false;
  for (let step = routes.firstStep[route]; step < routes.firstStep[route + 1]; step++) {
    if (steps.station[step] === station) return true;
    for (const row of rowsOf(steps.needStart, step))
      if (isBuiltAt(model, steps.needResource[row], station)) return true;
  }
  return false;
}
