import { meanOf, scaled } from '../../random/distribution.js';
import { routesOf, stationsOf } from '../lookup/placed.js';
import type { Scenario } from '../types/scenario.js';
import type { Chance, RouteEntry, StationStep } from '../types/steps.js';
import { type Relief, withEntry } from './relief.js';
import type { Thing } from './thing.js';

/** What is left of a work time. */
const WORK_LEFT = 0.9;

/**
 * 10 % off the work of each step, and each chance to create a defect halved. Processes, repairs and mending
 * stay.
 */
export function betterSteps(scenario: Scenario): Relief[] {
  const stations = stationsOf(scenario);
  return routesOf(scenario).flatMap(({ feeder, entries }) =>
    stepsIn(entries).flatMap(({ at, step }): Relief[] => {
      const name = feeder === undefined ? step.name : `${step.name} (${feeder})`;
      const of: Thing = { kind: 'step', name: step.name, site: stations.get(step.at)?.siteName ?? '' };
      const change =
        (better: (step: StationStep) => StationStep) =>
        (from: Scenario): Scenario =>
          feeder === undefined
            ? { ...from, route: withStep(from.route, at, better) }
            : withEntry(from, 'feeders', feeder, (its) => ({
                ...its,
                route: withStep(its.route, at, better),
              }));
      return [
        ...(worked(step) === 0
          ? []
          : [{ kind: 'work', text: `10 % off the work of ${name}`, of, change: change(faster) } as const]),
        ...Object.keys(step.creates).map(
          (defect): Relief => ({
            kind: 'defect',
            text: `half as much ${defect} from ${name}`,
            of,
            which: defect,
            change: change((its) => withEntry(its, 'creates', defect, halved)),
          }),
        ),
      ];
    }),
  );
}

/** Mean minutes of what `faster` shortens. */
const worked = ({ work, passes }: StationStep): number =>
  [work, passes?.work].reduce((sum, each) => sum + (each === undefined ? 0 : meanOf(each)), 0);

const faster = (step: StationStep): StationStep => ({
  ...step,
  work: step.work === undefined ? undefined : scaled(step.work, WORK_LEFT),
  passes:
    step.passes === undefined ? undefined : { ...step.passes, work: scaled(step.passes.work, WORK_LEFT) },
});

const halved = (chance: Chance): Chance => ({
  usual: chance.usual / 2,
  byOption: chance.byOption.map((each) => ({ ...each, chance: each.chance / 2 })),
});

/** Steps with their places in the route, those side by side with a second number. */
function stepsIn(
  route: readonly RouteEntry[],
): { readonly at: readonly number[]; readonly step: StationStep }[] {
  return route.flatMap((entry, i) =>
    entry.kind === 'lane'
      ? []
      : entry.sideBySide === undefined
        ? [{ at: [i], step: entry }]
        : entry.sideBySide.map((step, j) => ({ at: [i, j], step })),
  );
}

function withStep(
  route: readonly RouteEntry[],
  [i, j]: readonly number[],
  change: (step: StationStep) => StationStep,
): RouteEntry[] {
  return route.map((entry, index) =>
    index !== i || entry.kind === 'lane'
      ? entry
      : j === undefined
        ? change(entry)
        : {
            ...entry,
            sideBySide: entry.sideBySide?.map((step, inner) => (inner === j ? change(step) : step)),
          },
  );
}
