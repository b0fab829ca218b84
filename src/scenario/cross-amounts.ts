import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';
import { own, routesOf, siteOfStation, stepsOf } from './cross-routes.js';

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
