import { furthestBack } from './cross-defects.js';
import { joinIndex } from './cross-joins.js';
import {
  findsOf,
  own,
  routesOf,
  siteOfStation,
  stepsOf,
  type PlacedRoute,
  type PlacedStep,
} from './cross-routes.js';
import { sayPath, type Finding } from './problem.js';
import { makesNote } from './quality-of-step.js';
import type { Scenario } from './scenario.js';

/** Holds that nothing comes to, that do not know how long to mend, or that some units would slip by; comparisons with what is no inspection. */
export function holdFindings(scenario: Scenario): Finding[] {
  const routes = routesOf(scenario),
    siteOf = siteOfStation(scenario);
  const worksOnLots = ({ step: { at } }: PlacedStep): boolean =>
    own(scenario.sites[siteOf.get(at) ?? '']?.stations ?? {}, at)?.lot !== undefined;
  return routes.flatMap((route) => {
    const furthest = furthestBack(route);
    return stepsOf(route).flatMap((placed) => [
      ...(placed.step.hold === undefined ? [] : holdOf(routes, route, furthest, placed, worksOnLots(placed))),
      ...(placed.step.comparesWith === undefined ? [] : comparisonOf(route, placed, worksOnLots(placed))),
    ]);
  });
}

function holdOf(
  routes: readonly PlacedRoute[],
  route: PlacedRoute,
  furthest: readonly number[],
  placed: PlacedStep,
  worksOnLots: boolean,
): Finding[] {
  const path = [...placed.path, 'hold'],
    found: Finding[] = [];
  if (worksOnLots)
    found.push({
      path,
      wanted: `no hold at "${placed.step.at}", which works on lots; give the hold a station of its own`,
      atKey: true,
    });
  if (placed.step.sample !== undefined)
    found.push({
      path: [...placed.path, 'sample'],
      wanted: 'no sample at a hold, which no unit with noted items may pass',
      atKey: true,
    });
  const latest = Math.max(placed.index, furthest[placed.index]!);
  const notes = routes.flatMap((other) => {
    const join = other === route ? undefined : joinIndex(routes, other, route);
    if (other !== route && (join === undefined || join > latest)) return [];
    return stepsOf(other)
      .filter(({ index }) => other !== route || index <= latest)
      .flatMap(findsOf)
      .filter(({ find }) => makesNote(find));
  });
  if (notes.length === 0)
    found.push({
      path,
      wanted:
        'an earlier find with carry, or with a back to that passes units on at its limit; without one nothing is ever held here',
      atKey: true,
    });
  const untimed = notes.find(({ find }) => find.then.kind === 'back');
  if (untimed !== undefined && placed.step.hold!.mend === undefined) {
    found.push({
      path,
      wanted: `{ mend: ... }, the work on items that come without a time, such as those passed on at the limit of ${sayPath(untimed.path)}`,
      seen: 'none',
    });
  }
  return found;
}

function comparisonOf(route: PlacedRoute, placed: PlacedStep, worksOnLots: boolean): Finding[] {
  const path = [...placed.path, 'compares with'],
    { step, differs } = placed.step.comparesWith!;
  const earlier = stepsOf(route).find((other) => other.step.name === step);
  const found: Finding[] = [];
  if (findsOf(placed).length === 0)
    found.push({
      path,
      wanted: 'a step that finds something or may fail; this one is no inspection',
      atKey: true,
    });
  if (earlier !== undefined && findsOf(earlier).length === 0)
    found.push({ path, wanted: 'an inspection or test', seen: `"${step}", which finds nothing` });
  if (differs !== undefined && worksOnLots)
    found.push({
      path: [...path, 'if it differs'],
      wanted: `no extra work at "${placed.step.at}", which works on lots; give the inspection a station of its own`,
      atKey: true,
    });
  return found;
}
