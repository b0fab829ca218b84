import type { Changeable } from '../changes/edit.js';
import { namedChanges } from '../changes/possible.js';
import { crossFindings } from '../checks.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { type MadeChange, NotTogether, withChanges } from './stages.js';

/** What is made in a scenario, in the planner's order. */
export const madeIn = (scenario: Scenario): readonly MadeChange[] =>
  namedChanges(scenario).flatMap((change) => (change.made === undefined ? [] : { change, ...change.made }));

/**
 * A scenario that is sound as written, with the changes in it of which it says that they are made; or what is
 * wrong with that, below `costs.changes`.
 * @param prepare done to it once the bundles are in it, before the reliefs
 */
export function withMade(
  base: Changeable,
  prepare: (scenario: Scenario) => Scenario = (scenario) => scenario,
):
  | { readonly scenario: Scenario; readonly findings?: undefined }
  | { readonly scenario?: undefined; readonly findings: readonly Finding[] } {
  const { scenario: written } = base,
    made = madeIn(written),
    last = made.at(-1)?.change.name;
  if (last === undefined) return { scenario: prepare(written) };
  try {
    const scenario = withChanges({ scenario: prepare(written), data: () => base, prepare }, made),
      all = [scenario, ...(scenario.before ?? []).map((stage) => stage.scenario)],
      [wrong] = all.flatMap((each) => crossFindings(each, true));
    return wrong === undefined
      ? { scenario }
      : {
          findings: [
            {
              path: ['costs', 'changes', last, 'made'],
              wanted: `changes with which the scenario is sound; these would need ${wrong.wanted}`,
              atKey: true,
            },
          ],
        };
  } catch (error) {
    if (error instanceof NotTogether) return { findings: error.findings };
    throw error;
  }
}
