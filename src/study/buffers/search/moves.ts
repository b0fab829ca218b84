import { defined } from '../../lists.js';
import { type Layout, placesOf, type Spot, unevenness } from '../spots.js';
import type { Tried } from './tried.js';

/**
 * All moves of one place are tried up to so many spots; with more, those between the spots that lose least
 * and gain most.
 */
const ALL_MOVES = 6;
/** Whether there are too many spots to try every move of a place. */
export const areMany = (spots: readonly Spot[]): boolean => spots.length > ALL_MOVES;

/**
 * One place fewer in each of the spots that may have fewer; the fullest first, so that of equal ones it is
 * taken there.
 * @param among numbers of the spots looked at
 */
export function fewerPlaces(
  spots: readonly Spot[],
  layout: Layout,
  among: Iterable<number> = layout.keys(),
): Layout[] {
  return [...among]
    .filter((s) => defined(layout[s]) > defined(spots[s]).least)
    .sort((a, b) => defined(layout[b]) - defined(layout[a]) || a - b)
    .map((s) => changed(layout, s, -1));
}

/** One place more in each of the spots; the emptiest first. */
export function morePlaces(layout: Layout, among: Iterable<number> = layout.keys()): Layout[] {
  return [...among]
    .sort((a, b) => defined(layout[a]) - defined(layout[b]) || a - b)
    .map((s) => changed(layout, s, 1));
}

/** Of many spots only one in so many is looked at. */
const LIKELY = 4;

/**
 * Spots in which a place more may gain: of many spots those for whose room most units wait, by what was
 * booked in the runs of the layout; all of few.
 */
export function likelyToGain(trials: Tried, spots: readonly Spot[], layout: Layout): number[] {
  const lacking = trials.lacking(layout);
  return likely(spots, (s) => -defined(lacking[s]));
}

/** Spots in which a place fewer may lose least: of many spots those that are used least; all of few. */
export function likelyToSpare(trials: Tried, spots: readonly Spot[], layout: Layout): number[] {
  const lacking = trials.lacking(layout),
    inside = trials.inside(layout);
  return likely(spots, (s) => {
    const places = defined(layout[s]);
    return places > defined(spots[s]).least ? defined(lacking[s]) + defined(inside[s]) / places : Infinity;
  });
}

/** The lowest of a rank come first; where it does not tell them apart, all. */
function likely(spots: readonly Spot[], rank: (spot: number) => number): number[] {
  const all = [...spots.keys()];
  if (!areMany(spots)) return all;
  const ranks = all.map(rank),
    first = [...all]
      .sort((a, b) => defined(ranks[a]) - defined(ranks[b]) || a - b)
      .slice(0, Math.max(ALL_MOVES, Math.ceil(spots.length / LIKELY)));
  return ranks[defined(first[0])] === ranks[defined(first.at(-1))] ? all : first.sort((a, b) => a - b);
}

/** A whole load more, or fewer (-1), in each spot where several units come or go at once. */
export const byLoads = (
  spots: readonly Spot[],
  loads: readonly number[],
  layout: Layout,
  sign: 1 | -1,
  most = Infinity,
  among: Iterable<number> = layout.keys(),
): Layout[] =>
  [...among]
    .filter((s) => {
      const load = loads[s] ?? 1;
      return (
        load > 1 &&
        (sign > 0
          ? placesOf(layout) + load <= most
          : placesOf(layout) - load >= most && defined(layout[s]) - load >= defined(spots[s]).least)
      );
    })
    .map((s) => changed(layout, s, sign * (loads[s] ?? 1)));

export const changed = (layout: Layout, spot: number, by: number): number[] =>
  layout.map((places, s) => (s === spot ? places + by : places));

/** Both changes of a layout, one after the other. */
export const together = (layout: Layout, one: Layout, other: Layout): number[] =>
  layout.map((places, s) => defined(one[s]) + defined(other[s]) - places);

/** Of as many places: whether they are spread over more spots. */
export const isEvener = (one: Layout, other: Layout): boolean => unevenness(one) < unevenness(other);
