import { allSteps } from '../lookup/placed.js';
import type { Scenario } from '../types/scenario.js';
import { type Relief, withEntry } from './relief.js';

/** The site of a feeder that uses stations of several; undefined: not known. */
export type SiteOfFeeder = (feeder: string) => string | undefined;

/** One more in the target stock of each feeder of interchangeable sub-assemblies. */
export function moreStock(scenario: Scenario, siteOfFeeder: SiteOfFeeder): Relief[] {
  return Object.entries(scenario.feeders)
    .filter(([, { kind }]) => kind === 'stock')
    .map(
      ([name, { target }]): Relief => ({
        kind: 'target stock',
        text: `one more in the target stock of ${name} (${target + 1} instead of ${target})`,
        of: { kind: 'feeder', name, site: siteOf(scenario, name, siteOfFeeder) },
        change: (from) => withEntry(from, 'feeders', name, (its) => ({ ...its, target: its.target + 1 })),
      }),
    );
}

/** Where several sites are not told apart it is the first. */
function siteOf(scenario: Scenario, name: string, siteOfFeeder: SiteOfFeeder): string {
  const steps = allSteps(scenario).filter(({ route }) => route.feeder === name),
    [site = '', ...others] = new Set(steps.flatMap(({ where }) => where?.siteName ?? []));
  return others.length === 0 ? site : (siteOfFeeder(name) ?? site);
}
