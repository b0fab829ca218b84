import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { once } from '../values/raw.js';
import { type PlacedRoute, routesOf, sendBacksOf, stationsOf } from './placed.js';

/** A send-back to a step at another site, to which the unit goes by lanes. */
export interface WayBack {
  /** Of the find, and the lanes that it names. */
  readonly path: Path;
  readonly by: readonly string[] | undefined;
  readonly route: PlacedRoute;
  /** Its number: the unit's is 0. */
  readonly routeId: number;
  /** Entries of the finding step and of the one it sends to, and their sites. */
  readonly from: number;
  readonly to: number;
  readonly here: string;
  readonly there: string;
}

/** Of all routes, in the order of the file. */
export const waysBackOf = once((scenario: Scenario): readonly WayBack[] => {
  const stations = stationsOf(scenario);
  return routesOf(scenario).flatMap((route, routeId) => {
    const siteAt = (index: number): string | undefined => {
      const entry = route.entries[index];
      return entry?.kind === 'step' ? stations.get(entry.at)?.siteName : undefined;
    };
    return sendBacksOf(route).flatMap(({ path, by, from, to }) => {
      const [here, there] = [siteAt(from), siteAt(to)];
      return here === undefined || there === undefined || here === there
        ? []
        : [{ path, by, route, routeId, from, to, here, there }];
    });
  });
});

/**
 * The lanes by which a unit is sent back: those that the find names; else the fewest that lead there one
 * after the other, of equally few the first in the file. Undefined: none lead there.
 */
export const lanesBack = ({ lanes }: Scenario, { by, here, there }: WayBack): readonly string[] | undefined =>
  by ?? fewestLanes(lanes, here, there);

/** Breadth first, so that a site is come to by the fewest, the earliest in the file first. */
function fewestLanes(lanes: Scenario['lanes'], here: string, there: string): readonly string[] | undefined {
  const ways = new Map<string, readonly string[]>([[here, []]]);
  for (const [site, way] of ways)
    for (const [name, { from, to }] of Object.entries(lanes))
      if (from === site && !ways.has(to)) ways.set(to, [...way, name]);
  return ways.get(there);
}

/** Name of a step of a route; '' of a lane. */
export const nameAt = ({ entries }: PlacedRoute, index: number): string => {
  const entry = entries[index];
  return entry?.kind === 'step' ? entry.name : '';
};
