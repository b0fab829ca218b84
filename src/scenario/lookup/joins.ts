import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { once } from '../values/raw.js';
import { type PlacedRoute, routesOf, stepsOf } from './placed.js';

/** How many feeders may each need the next; a sub-assembly of three levels is much. */
export const DEEPEST_FEEDERS = 50;

interface Joined {
  /** What joins, by itself or inside another sub-assembly, and the index at which it first does. */
  readonly at: ReadonlyMap<PlacedRoute, number>;
  /** How many feeders need each other in a row below it. */
  readonly depth: number;
}
interface Joins {
  readonly of: ReadonlyMap<PlacedRoute, Joined>;
  readonly tooDeep: Path | undefined;
}

const joinsOf = once((scenario: Scenario): Joins => {
  const routes = routesOf(scenario),
    byName = new Map(routes.map((route) => [route.feeder, route] as const)),
    of = new Map<PlacedRoute, Joined>(),
    open = new Set<PlacedRoute>();
  let tooDeep: Path | undefined;
  const walk = (route: PlacedRoute): Joined => {
    const before = of.get(route);
    if (before !== undefined) return before;
    const at = new Map<PlacedRoute, number>();
    let depth = 0;
    open.add(route);
    for (const { path, step, index } of stepsOf(route)) {
      for (const part of Object.keys(step.parts)) {
        const feeder = byName.get(part);
        if (feeder === undefined) continue;
        if (!at.has(feeder)) at.set(feeder, index);
        // A ring is told as such.
        if (open.has(feeder)) continue;
        const inner = open.size > DEEPEST_FEEDERS ? undefined : walk(feeder);
        depth = Math.max(depth, 1 + (inner?.depth ?? DEEPEST_FEEDERS));
        if (depth > DEEPEST_FEEDERS) tooDeep ??= [...path, 'parts', part];
        else for (const each of inner?.at.keys() ?? []) if (!at.has(each)) at.set(each, index);
      }
    }
    open.delete(route);
    const joined = { at, depth };
    of.set(route, joined);
    return joined;
  };
  for (const route of routes) walk(route);
  return { of, tooDeep };
});

/**
 * Index of the entry of `to` at which what goes along `from` first joins it, by itself or inside another
 * sub-assembly; undefined if it never does.
 */
export const joinIndex = (scenario: Scenario, from: PlacedRoute, to: PlacedRoute): number | undefined =>
  joinsOf(scenario).of.get(to)?.at.get(from);

/** The first place at which feeders need each other in too long a row. */
export const tooDeepIn = (scenario: Scenario): Path | undefined => joinsOf(scenario).tooDeep;
