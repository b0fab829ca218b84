import type { Finding } from '../types/problem.js';

import type { Scenario } from '../types/scenario.js';
import { own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';
import type { PlacedRoute } from '../whole/placed.js';

/**
 * Feeders that need each other in a ring: none of their sub-assemblies could ever be finished. Each ring is
 * told once.
 */
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

/** Demands that can never be met: more people than the crew has, more parts than the stock may hold. */
export function amountFindings(scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  const siteOf = siteOfStation(scenario);
  for (const route of routesOf(scenario)) {
    for (const { path, step } of stepsOf(route)) {
      const site = siteOf.get(step.at);
      for (const [name, people] of Object.entries(step.crew)) {
        const crew = site === undefined ? undefined : own(scenario.sites[site]!.crews, name);
        if (crew !== undefined && people > crew.headcount)
          found.push({
            path: [...path, 'crew', name],
            wanted: `at most ${crew.headcount}, the headcount of ${name} in site ${site}`,
            seen: String(people),
          });
      }
      for (const [name, count] of Object.entries(step.parts)) {
        const feeder = own(scenario.feeders, name);
        if (feeder?.kind !== 'stock' || count === 'own') continue;
        if (count > feeder.target)
          found.push({
            path: [...path, 'parts', name],
            wanted: `at most ${feeder.target}, the target stock of the feeder`,
            seen: String(count),
          });
        if (name === route.feeder)
          found.push({
            path: [...path, 'parts', name],
            wanted: 'parts of another feeder than the one this step belongs to',
            atKey: true,
          });
      }
    }
  }
  return found;
}
