import { compile } from '../../../scenario/compile.js';
import { allSteps } from '../../../scenario/lookup/placed.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { capacity } from '../../capacity/capacity.js';
import { type Relief, withEntry } from '../relief.js';

/** One more in the target stock of each feeder of interchangeable sub-assemblies. */
export function moreStock(scenario: Scenario): Relief[] {
  return Object.entries(scenario.feeders)
    .filter(([, { kind }]) => kind === 'stock')
    .map(
      ([name, { target }]): Relief => ({
        kind: 'target stock',
        text: `one more in the target stock of ${name} (${target + 1} instead of ${target})`,
        of: { kind: 'feeder', name, site: siteOf(scenario, name) },
        change: (from) => withEntry(from, 'feeders', name, (its) => ({ ...its, target: its.target + 1 })),
      }),
    );
}

/**
 * The site of the slowest of what it uses, as in the capacity table, which is asked where there are several.
 */
function siteOf(scenario: Scenario, name: string): string {
  const steps = allSteps(scenario).filter(({ route }) => route.feeder === name),
    [site = '', ...others] = new Set(steps.flatMap(({ where }) => where?.siteName ?? []));
  if (others.length === 0) return site;
  const row = capacity(compile(scenario), scenario).rows.find(
    (each) => each.kind === 'feeder' && each.name === name,
  );
  return row?.site ?? site;
}
