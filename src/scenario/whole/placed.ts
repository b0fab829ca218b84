import type { OptionMix } from '../types/programme.js';
import type { Chance, Condition, Find, RouteEntry, StationStep } from '../types/steps.js';
import type { Path } from '../types/problem.js';

import type { Scenario } from '../types/scenario.js';

/** The route of the unit (`feeder` undefined) or of a feeder, with its place in the file. */
export interface PlacedRoute {
  readonly path: Path;
  readonly feeder: string | undefined;
  readonly kind: 'unit' | 'own' | 'stock';
  readonly entries: readonly RouteEntry[];
}
export interface PlacedStep {
  readonly path: Path;
  readonly index: number;
  readonly step: StationStep;
}

export function routesOf(scenario: Scenario): PlacedRoute[] {
  const feeders = Object.entries(scenario.feeders).map(
    ([name, f]): PlacedRoute => ({
      path: ['feeders', name, 'route'],
      feeder: name,
      kind: f.kind,
      entries: f.route,
    }),
  );
  return [{ path: ['route'], feeder: undefined, kind: 'unit', entries: scenario.route }, ...feeders];
}

/** A group of steps side by side is followed by its steps, at the same index. */
export function stepsOf(route: PlacedRoute): PlacedStep[] {
  return route.entries.flatMap((step, index) => {
    const path = [...route.path, index];
    if (step.kind !== 'step') return [];
    return [
      { path, index, step },
      ...(step.sideBySide ?? []).map((each, i) => ({
        path: [...path, 'side by side', i],
        index,
        step: each,
      })),
    ];
  });
}

/** What a step may find and how it may fail; `kind` is undefined for a failed test. */
export function findsOf({ path, step }: PlacedStep): { path: Path; kind: string | undefined; find: Find }[] {
  const finds: { path: Path; kind: string | undefined; find: Find }[] = Object.entries(step.finds).map(
    ([kind, find]) => ({ path: [...path, 'finds', kind], kind, find }),
  );
  return step.fails === undefined
    ? finds
    : [...finds, { path: [...path, 'fails'], kind: undefined, find: step.fails }];
}

/** A send-back within a route: from the step at index `from` to the one at `to`, at or before it. */
export interface SendBack {
  readonly path: Path;
  readonly from: number;
  readonly to: number;
}

/** Send-backs whose target exists and is not ahead; others are reported with the names. */
export function sendBacksOf(route: PlacedRoute): SendBack[] {
  const place = new Map(stepsOf(route).map(({ step, index }) => [step.name, index]));
  return stepsOf(route).flatMap((placed) =>
    findsOf(placed).flatMap(({ path, find }) => {
      const to = find.then.kind === 'back' ? place.get(find.then.to) : undefined;
      return to === undefined || to > placed.index
        ? []
        : [{ path: [...path, 'back to'], from: placed.index, to }];
    }),
  );
}

/** Station -> its site. */
export function siteOfStation(scenario: Scenario): Map<string, string> {
  return new Map(
    Object.entries(scenario.sites).flatMap(([site, { stations }]) =>
      Object.keys(stations).map((station): [string, string] => [station, site]),
    ),
  );
}

export const isAlways = (chance: Chance): boolean =>
  chance.usual === 1 && chance.byOption.every((row) => row.chance === 1);

/** The values of an option that units can have and that meet a condition. */
export function possibleValues(options: OptionMix, option: string, when: Condition): string[] {
  const wanted = own(when, option);
  return Object.entries(own(options, option) ?? {}).flatMap(([value, share]) =>
    share > 0 && (wanted === undefined || wanted.includes(value)) ? [value] : [],
  );
}

/** Everything that meets `narrow` meets `wide` too. */
export function covers(wide: Condition, narrow: Condition, options: OptionMix): boolean {
  return Object.entries(wide).every(([option, values]) =>
    possibleValues(options, option, narrow).every((value) => values.includes(value)),
  );
}

/** A map's own entry, never one of its prototype. */
export function own<Value>(map: Readonly<Record<string, Value>>, key: string): Value | undefined {
  return Object.hasOwn(map, key) ? map[key] : undefined;
}

/**
 * Index of the entry of `to` at which what goes along `from` first joins it, by itself or inside another
 * sub-assembly; undefined if it never does.
 */
export function joinIndex(
  routes: readonly PlacedRoute[],
  from: PlacedRoute,
  to: PlacedRoute,
  seen: ReadonlySet<PlacedRoute> = new Set(),
): number | undefined {
  if (seen.has(to)) return undefined;
  const inner = new Set(seen).add(to);
  return stepsOf(to).find(({ step }) =>
    Object.keys(step.parts).some((name) => {
      const feeder = routes.find((route) => route.feeder === name);
      return (
        feeder !== undefined && (feeder === from || joinIndex(routes, from, feeder, inner) !== undefined)
      );
    }),
  )?.index;
}
