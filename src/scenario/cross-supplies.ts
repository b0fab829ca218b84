import { own, routesOf, siteOfStation, stepsOf } from './cross-routes.js';
import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';

/** Supplies that nothing takes, that are taken in another site, or whose deliveries are out of order with the programme. */
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
    if (order.kind === 'dates') order.dates.forEach(({ on }, i) => early([...path, i, 'on'], on));
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
