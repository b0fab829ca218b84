import { difference, familyLevel } from '../../statistics/difference.js';
import { sum } from '../../statistics/sums.js';
import { type Counts, isWithin } from './choices.js';
import type { Pool } from './pool.js';

/** A set that surely does less than one that lacks a change of it. */
export interface Hurt {
  readonly with: Counts;
  readonly without: Counts;
}

/**
 * Where the search is wrong that no change hurts, as far as what was run shows: pairs of sets one change
 * apart, of which the larger one surely does less by more than the zone, all of them at `level`.
 */
export function hurtful(pool: Pool, zone: number, level: number): Hurt[] {
  const sets = pool.ran,
    pairs = sets.flatMap((larger) =>
      sets
        .filter((smaller) => sum(larger) - sum(smaller) === 1 && isWithin(smaller, larger))
        .map((smaller) => ({ with: larger, without: smaller })),
    ),
    each = familyLevel(level, pairs.length);
  return pairs.filter((pair) => {
    const { high } = difference(pool.worths(pair.without), pool.worths(pair.with), each).difference;
    return high !== null && high < -zone;
  });
}
