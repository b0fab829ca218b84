import { isDeepStrictEqual } from 'node:util';
import { routesOf, stepsOf } from '../../scenario/lookup/placed.js';
import type { Thing, ThingKind } from '../../scenario/reliefs/thing.js';
import type { Station } from '../../scenario/types/plant.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { StationStep } from '../../scenario/types/steps.js';

/** What differs between two scenarios. */
export interface Changed {
  /** What can be pointed at, each once. */
  readonly things: readonly Thing[];
  /** Whether more differs than that: the programme, prices, something that only one of them has. */
  readonly isMore: boolean;
}

/** Compares two scenarios as read, so that it does not matter how an edit was written. */
export function changedThings(base: Scenario, other: Scenario): Changed {
  const things: Thing[] = [];
  let isMore = false;
  const compare = <Value>(
    one: Readonly<Record<string, Value>>,
    two: Readonly<Record<string, Value>>,
    differ: (name: string, a: Value, b: Value) => void,
  ): void => {
    if (!isDeepStrictEqual(Object.keys(one), Object.keys(two))) isMore = true;
    for (const [name, a] of Object.entries(one)) {
      const b = Object.hasOwn(two, name) ? two[name] : undefined;
      if (b !== undefined && !isDeepStrictEqual(a, b)) differ(name, a, b);
    }
  };
  const push =
    (kind: ThingKind, site = '') =>
    (name: string) => {
      things.push({ kind, name, site });
    };
  compare(base.sites, other.sites, (site, a, b) => {
    compare(a.stations, b.stations, (name, one, two) => {
      push(isSame(one, two, SPACES) ? 'room' : 'station', site)(name);
    });
    compare(a.crews, b.crews, push('crew', site));
    if (!isSame(a, b, ['stations', 'crews'])) isMore = true;
  });
  compare(base.lanes, other.lanes, (name, one, two) => {
    push(isSame(one, two, ['bank', 'arrivalBank']) ? 'room' : 'lane')(name);
  });
  compare(base.feeders, other.feeders, (name, one, two) => {
    if (!isSame(one, two, ['route'])) push('feeder')(name);
  });
  compare(base.supplies, other.supplies, push('supply'));
  compare(base.carriers, other.carriers, push('carrier'));
  compare(base.teams, other.teams, push('team'));
  compare(base.calendars, other.calendars, push('hours'));
  if (!compareSteps(base, other, things)) isMore = true;
  const rest = [...ELSEWHERE, 'name', 'note', 'assumptions', 'levers'] as const;
  return { things, isMore: isMore || !isSame(base, other, rest) };
}

const SPACES: readonly (keyof Station)[] = ['buffer', 'reworkBuffer'];
const ELSEWHERE = [
  'sites',
  'lanes',
  'feeders',
  'supplies',
  'carriers',
  'teams',
  'calendars',
  'route',
] as const satisfies readonly (keyof Scenario)[];

/** Whether all else is alike. */
function isSame<Of extends object>(one: Of, two: Of, but: readonly (keyof Of)[]): boolean {
  const without = (of: Of): object =>
    Object.fromEntries(Object.entries(of).filter(([key]) => !but.includes(key as keyof Of)));
  return isDeepStrictEqual(without(one), without(two));
}

/** Tells the steps that differ; false: one of them has other steps or lanes, or another order. */
function compareSteps(base: Scenario, other: Scenario, things: Thing[]): boolean {
  const shapeOf = (scenario: Scenario): unknown =>
    routesOf(scenario).map((route) =>
      route.entries.map((entry) =>
        entry.kind === 'lane'
          ? entry
          : [entry, ...(entry.sideBySide ?? [])].map(({ name, at }) => [name, at]),
      ),
    );
  if (!isDeepStrictEqual(shapeOf(base), shapeOf(other))) return false;
  const steps = (scenario: Scenario): StationStep[] =>
      routesOf(scenario).flatMap((route) => stepsOf(route).map(({ step }) => step)),
    siteOf = new Map(
      Object.entries(base.sites).flatMap(([site, { stations }]) =>
        Object.keys(stations).map((station) => [station, site]),
      ),
    ),
    theirs = steps(other);
  steps(base).forEach((step, i) => {
    const changed = theirs[i];
    if (changed !== undefined && !isSame(step, changed, ['sideBySide']))
      things.push({ kind: 'step', name: step.name, site: siteOf.get(step.at) ?? '' });
  });
  return true;
}
