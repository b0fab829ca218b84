import { allSteps, type PlacedRoute, type StationedStep, stepsOf } from '../lookup/placed.js';
import type { Carriers, Stretch, Team } from '../types/plant.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { name } from '../values/keys.js';
import { word } from '../values/scalars.js';

/** A unit keeps what stays with it as bits of one number. */
const MOST = 31;

/** Keys of what stays with a unit from one step to another: a carrier, a team. */
export const stretchKeys = {
  from: name('the name of a step').describe(
    'The first step with it. It is claimed there together with the other needs of the step, or at the ' +
      'first later step that the unit does. Example: set up frame',
  ),
  to: name('the name of a step').describe(
    'The last step with it, in the same route: `from` or a later step. It is released when the unit has ' +
      'moved on to a later step. Example: receive',
  ),
  'in rework': word('without', 'again')
    .optional()
    .describe(
      'For a unit that has given it back and is sent back to a step behind the one at which it ' +
        'claimed it: `without`, it goes on without; `again`, it claims it again at the first of the ' +
        'steps that it does, and may wait for it while the next unit, which has it, waits for room. ' +
        'Default: without. Example: again',
    ),
};

/** `steps` are those from..to; empty where they are not of one route and in order. */
export interface PlacedStretch<Kind extends Stretch> {
  readonly name: string;
  readonly path: Path;
  readonly kind: Kind;
  readonly route: PlacedRoute | undefined;
  readonly steps: readonly StationedStep[];
  /** Names of these steps. */
  readonly names: ReadonlySet<string>;
}

/** No more than a unit can keep: that there are more is told. */
export function placedStretches<Kind extends Stretch>(
  scenario: Scenario,
  section: string,
  stretches: Readonly<Record<string, Kind>>,
): PlacedStretch<Kind>[] {
  const all = allSteps(scenario);
  return Object.entries(stretches)
    .slice(0, MOST)
    .map(([name, kind]) => {
      const first = all.find(({ step }) => step.name === kind.from),
        route = first?.route,
        inRoute = all.filter((step) => step.route === route),
        from = first?.index ?? -1,
        to = inRoute.find(({ step }) => step.name === kind.to)?.index ?? -1,
        steps = inRoute.filter(({ index }) => from <= index && index <= to);
      return {
        name,
        path: [section, name],
        kind,
        route,
        steps,
        names: new Set(steps.map(({ step }) => step.name)),
      };
    });
}

/** Carriers, then teams. */
export const stretchesOf = (scenario: Scenario): PlacedStretch<Carriers | Team>[] => [
  ...placedStretches<Carriers | Team>(scenario, 'carriers', scenario.carriers),
  ...placedStretches<Carriers | Team>(scenario, 'teams', scenario.teams),
];

/** Stretches that go backwards or over two routes, claims for a lot, more kinds than a unit can keep. */
export function* stretchFindings(scenario: Scenario): Iterable<Finding> {
  const { carriers, teams } = scenario,
    all = stretchesOf(scenario),
    count = Object.keys(carriers).length + Object.keys(teams).length;
  if (count > MOST)
    yield {
      path: [Object.keys(teams).length > 0 ? 'teams' : 'carriers'],
      wanted: `at most ${MOST} kinds of carriers and teams together`,
      seen: String(count),
      atKey: true,
    };
  for (const { kind, path, route, steps } of all) {
    const [first] = steps,
      isHere = route !== undefined && stepsOf(route).some(({ step }) => step.name === kind.to);
    if (route !== undefined && first === undefined)
      yield {
        path: [...path, 'to'],
        wanted: `"${kind.from}" or a later step of the same route`,
        seen: `"${kind.to}", which ${isHere ? 'comes earlier' : 'is in another'}`,
      };
    if (first?.where?.station.lot !== undefined)
      yield {
        path: [...path, 'from'],
        wanted: 'a step at a station that takes units one by one',
        seen: `"${first.step.name}", at "${first.step.at}", which works on lots`,
      };
  }
}
