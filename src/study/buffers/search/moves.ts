import { defined } from '../../lists.js';
import { type Layout, type Spot, unevenness } from '../spots.js';

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

const changed = (layout: Layout, spot: number, by: number): number[] =>
  layout.map((places, s) => (s === spot ? places + by : places));

/** Both changes of a layout, one after the other. */
export const together = (layout: Layout, one: Layout, other: Layout): number[] =>
  layout.map((places, s) => defined(one[s]) + defined(other[s]) - places);

/** Of as many places: whether they are spread over more spots. */
export const isEvener = (one: Layout, other: Layout): boolean => unevenness(one) < unevenness(other);
