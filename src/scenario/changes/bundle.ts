import type { PossibleChange } from '../types/possible.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { askedOf, changedBy } from './change.js';
import type { Changeable } from './edit.js';
import { namedChanges } from './possible.js';
import { requiredBy } from './requires.js';

/**
 * The scenario with the edits of several bundles, all of them made together; or what is wrong with that, each
 * finding at its place below `costs.changes`.
 * @param of for what is wrong with them as a whole
 */
export function withBundles(
  base: Changeable,
  bundles: readonly PossibleChange[],
  of: string,
): { readonly scenario: Scenario; readonly findings?: undefined } | { readonly findings: Finding[] } {
  const findings: Finding[] = [],
    at = (name: string) => ['costs', 'changes', name];
  const wrong = (path: Finding['path'], _: string, finding: Omit<Finding, 'path'>): void =>
    void findings.push({ ...finding, path });
  const asked = bundles.flatMap(({ name, changes }) =>
      askedOf(changes, [...at(name), 'changes'], name, wrong),
    ),
    changed =
      findings.length > 0
        ? undefined
        : changedBy(base, asked, { at: at(of), of, is: 'the changes made together' }, wrong);
  return changed === undefined ? { findings } : { scenario: changed.scenario };
}

/** Bundles that do not read, or change nothing, of a scenario that is sound without them. */
export function* bundleFindings(base: Changeable): Iterable<Finding> {
  const known = new Map(namedChanges(base.scenario).map((each) => [each.name, each]));
  for (const bundle of known.values()) {
    if (bundle.changes === undefined) continue;
    const required = requiredBy(bundle, known).flatMap((name) => known.get(name) ?? []),
      made = withBundles(
        base,
        [...required.filter(({ changes }) => changes !== undefined), bundle],
        bundle.name,
      );
    if (made.findings !== undefined) yield* made.findings;
    else if (required.length === 0 && isSame(made.scenario, base.scenario))
      yield {
        path: ['costs', 'changes', bundle.name, 'changes'],
        wanted: 'changes that change something',
        seen: 'the scenario as it is',
        atKey: true,
      };
  }
}

/** In all that a run may depend on. */
function isSame(one: Scenario, other: Scenario): boolean {
  const text = (of: Scenario): string =>
    JSON.stringify({
      ...of,
      costs: of.costs && { ...of.costs, changes: undefined },
      assumptions: undefined,
      levers: undefined,
    });
  return text(one) === text(other);
}
