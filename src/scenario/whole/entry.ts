import { stationsOf } from '../lookup/placed.js';
import { meets, type Variety, varietiesOf } from '../steps/conditions.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { RouteEntry } from '../types/steps.js';
import { own } from '../values/raw.js';

/**
 * How units get onto their route: each has a step there, and a source that never ends meets a room that does.
 */
export function* entryFindings(scenario: Scenario): Iterable<Finding> {
  const varieties = varietiesOf(scenario, scenario.route);
  yield* withoutStep(scenario, varieties);
  yield* flood(scenario, varieties);
}

function* withoutStep({ route }: Scenario, varieties: readonly Variety[]): Iterable<Finding> {
  const none = varieties.find(
    (variety) => !route.some((entry) => isSure(entry) && meets(entry.when, variety)),
  );
  if (none === undefined) return;
  const build = Object.entries(none)
    .map(([option, value]) => `${option}: ${value}`)
    .join(', ');
  yield {
    path: ['route'],
    wanted: 'at least one step for every unit, without sample and without rework: only',
    seen: build === '' ? 'none' : `none for a unit with ${build}`,
  };
}

/** A saturated source lets units in for as long as there is room. */
function* flood(scenario: Scenario, varieties: readonly Variety[]): Iterable<Finding> {
  const { release, quantity } = scenario.programme;
  if (release.kind !== 'saturated' || quantity !== undefined) return;
  const first = [...new Set(varieties.flatMap((variety) => firstEntries(scenario.route, variety)))];
  if (first.length === 0 || !first.every((entry) => isUnlimited(scenario, entry))) return;
  const rooms = first.map((entry) => `"${entry.kind === 'lane' ? entry.lane : entry.at}"`).join(' and ');
  yield {
    path: ['programme', 'arrivals'],
    wanted:
      `a quantity, or a limit to the waiting spaces ahead of ${rooms}, where units enter: into ` +
      'unlimited room they would come in for ever at once',
    seen: '"saturated"',
  };
}

/** Entries at which units of a variety may begin: up to the first that none of them passes by. */
function firstEntries(route: readonly RouteEntry[], variety: Variety): RouteEntry[] {
  const met = route.filter(
    (entry) => meets(entry.when, variety) && !(entry.kind === 'step' && entry.rework === 'only'),
  );
  const sure = met.findIndex(isSure);
  return sure < 0 ? met : met.slice(0, sure + 1);
}

/** Every new unit that meets its condition visits it. */
const isSure = (entry: RouteEntry): boolean =>
  entry.kind === 'lane' || (entry.sample === undefined && entry.rework !== 'only');

function isUnlimited(scenario: Scenario, entry: RouteEntry): boolean {
  if (entry.kind === 'lane') return own(scenario.lanes, entry.lane)?.bank === undefined;
  const placed = stationsOf(scenario).get(entry.at);
  return placed !== undefined && placed.station.buffer === undefined;
}
