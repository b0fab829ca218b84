import { defined } from '../../lists.js';
import { type Layout, placesOf, type Spot } from '../spots.js';
import { changed } from './moves.js';

/** The largest leap, besides a load and all that a spot has. */
const LARGEST = 64;

/** Spots by what a place fewer there loses, the least first, and by what one more gains, the most first. */
export interface Order {
  readonly takes: readonly number[];
  readonly gives: readonly number[];
}

/**
 * Steps of several places at once (a pattern search of several scales: Hooke & Jeeves 1961, J. ACM 8(2),
 * 212-229; from memory): 2, 4, 8 .. and a load more at one spot, with at most `most` places in all. What is
 * too many is taken from one other spot, or one by one from those that lose least; or several places are
 * taken from one spot and handed out one by one where they gain most.
 */
export function leaps(
  spots: readonly Spot[],
  loads: readonly number[],
  layout: Layout,
  most: number,
  order: Order,
): Layout[] {
  const least = spots.map((spot) => spot.least),
    slack = most - placesOf(layout);
  const given = [...layout.keys()].flatMap((s) =>
    sizes(defined(loads[s]), most - placesOf(least)).flatMap((size) => {
      const more = changed(layout, s, size),
        need = Math.max(0, size - slack);
      if (need === 0) return [more];
      const fromOne = [...layout.keys()].filter((i) => i !== s).map((i) => changed(more, i, -need));
      return [...fromOne, spread(more, order.takes, s, -need, least)];
    }),
  );
  const taken = [...layout.keys()].flatMap((s) =>
    sizesWithin(defined(loads[s]), defined(layout[s]) - defined(least[s])).map((size) =>
      spread(changed(layout, s, -size), order.gives, s, size + Math.min(0, slack), least),
    ),
  );
  return [...given, ...taken].filter(
    (leap): leap is Layout =>
      leap !== null &&
      placesOf(leap) <= most &&
      leap.every((places, s) => places >= defined(least[s])) &&
      leap.join() !== layout.join(),
  );
}

/** The same of many spots: a few sizes, at a few spots only, one by one from those that lose least. */
export function fewLeaps(
  spots: readonly Spot[],
  loads: readonly number[],
  layout: Layout,
  order: Order,
  at: readonly number[],
): Layout[] {
  const least = spots.map((spot) => spot.least),
    wholeLoads = [...layout.keys()].filter((s) => defined(loads[s]) > 1).map((s) => [s, loads[s]] as const),
    few = at.flatMap((s) => [2, 4].map((size) => [s, size] as const));
  return [...wholeLoads, ...few]
    .map(([s, size]) => spread(changed(layout, s, defined(size)), order.takes, s, -defined(size), least))
    .filter((leap) => leap !== null);
}

/** All that a spot has, or 2, 4, 8 .. and a load of it, taken away without anything in return. */
export const less = (spots: readonly Spot[], loads: readonly number[], layout: Layout): Layout[] =>
  [...layout.keys()].flatMap((s) =>
    sizesWithin(defined(loads[s]), defined(layout[s]) - defined(spots[s]).least).map((size) =>
      changed(layout, s, -size),
    ),
  );

function sizes(load: number, most: number): number[] {
  const powers: number[] = [];
  for (let size = 2; size <= LARGEST; size *= 2) powers.push(size);
  return [...new Set([...powers, load, 2 * load])].filter((size) => size > 1 && size <= most);
}

const sizesWithin = (load: number, all: number): number[] => [
  ...new Set([...sizes(load, all), ...(all > 1 ? [all] : [])]),
];

/** So many more (fewer) places one by one over the spots in their order, none at `except`; null: too few. */
function spread(
  layout: Layout,
  order: readonly number[],
  except: number,
  by: number,
  least: Layout,
): Layout | null {
  const sign = Math.sign(by),
    next = [...layout];
  for (let left = Math.abs(by); left > 0; ) {
    const before = left;
    for (const s of order) {
      if (left === 0) break;
      const places = defined(next[s]) + sign;
      if (s === except || places < defined(least[s])) continue;
      next[s] = places;
      left--;
    }
    if (left === before) return null;
  }
  return next;
}
