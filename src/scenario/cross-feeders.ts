import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';
import { own, routesOf, stepsOf, type PlacedRoute } from './cross-routes.js';

/** Feeders that need each other in a ring: none of their sub-assemblies could ever be finished. Each ring is told once. */
export function feederFindings(scenario: Scenario): Finding[] {
  const routes = new Map(
    routesOf(scenario).flatMap((route) =>
      route.feeder === undefined ? [] : [[route.feeder, route] as const],
    ),
  );
  const found: Finding[] = [],
    done = new Set<string>(),
    way: string[] = [];
  const walk = (feeder: string, route: PlacedRoute): void => {
    way.push(feeder);
    for (const { path, step } of stepsOf(route)) {
      for (const part of Object.keys(step.parts)) {
        const next = routes.get(part);
        // A feeder that takes its own parts is told with the amounts.
        if (
          next === undefined ||
          own(scenario.feeders, part)?.kind !== 'stock' ||
          part === feeder ||
          done.has(part)
        )
          continue;
        const seen = way.indexOf(part);
        if (seen < 0) walk(part, next);
        else
          found.push({
            path: [...path, 'parts', part],
            wanted: 'parts that are built without this feeder',
            seen: `a ring: ${[...way.slice(seen), part].join(' needs ')}`,
            atKey: true,
          });
      }
    }
    way.pop();
    done.add(feeder);
  };
  for (const [feeder, route] of routes) if (!done.has(feeder)) walk(feeder, route);
  return found;
}
