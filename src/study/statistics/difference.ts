import { sampleVariance } from 'simple-statistics';
import { defined } from '../lists.js';
import { type Estimate } from './estimate.js';
import { meanInterval } from './interval.js';

/**
 * Two variants of a scenario under common random numbers: replication r of the one is set against replication
 * r of the other.
 */
export interface Difference {
  /**
   * Mean of second minus first over the replications, with its paired Student-t interval at the level asked.
   */
  readonly difference: Estimate;
  /**
   * (variance of first + variance of second) / variance of the differences: so many times as many
   * replications would be needed for the same interval without common random numbers. null below two pairs,
   * and where all differences are the same but for rounding.
   */
  readonly pairingGain: number | null;
}

/**
 * Paired comparison (Law 2015, Simulation Modeling and Analysis, sec. 10.2.1 and 11.2: common random numbers;
 * from memory). Pairs in which either value is not a number are left out.
 * @param first @param second values by replication, of equal length
 * @param level confidence of this interval; for several comparisons see `familyLevel`
 */
export function difference(first: readonly number[], second: readonly number[], level: number): Difference {
  if (first.length !== second.length)
    throw new RangeError(
      `difference: expected as many values of both, got ${first.length} and ${second.length}`,
    );
  const pairs = first
    .map((value, r) => [value, defined(second[r])] as const)
    .filter(([a, b]) => Number.isFinite(a) && Number.isFinite(b));
  const differences = pairs.map(([a, b]) => b - a);
  return {
    difference: meanInterval(differences, level),
    pairingGain:
      pairs.length < 2 || isRounding(pairs)
        ? null
        : (sampleVariance(pairs.map(([a]) => a)) + sampleVariance(pairs.map(([, b]) => b))) /
          sampleVariance(differences),
  };
}

/**
 * Values are compared and written with ten digits, so two of them are off by a part in 1e9 at most: a
 * spread of the differences below ten times that tells only how they were rounded, and a ratio to it
 * nothing.
 */
const ROUNDING = 1e-8;

function isRounding(pairs: readonly (readonly [number, number])[]): boolean {
  const differences = pairs.map(([a, b]) => b - a),
    largest = Math.max(...pairs.flat().map(Math.abs));
  return Math.max(...differences) - Math.min(...differences) <= ROUNDING * largest;
}

/**
 * Level of each of several intervals so that all hold together with at least `level` (Bonferroni's
 * inequality): 1 - (1 - level) / count.
 */
export function familyLevel(level: number, count: number): number {
  return 1 - (1 - level) / Math.max(1, count);
}

/**
 * P-values adjusted for being several, so that all claims together are wrong at most at the level (Holm 1979,
 * Scandinavian Journal of Statistics 6(2), 65-70): the i-th smallest of k is multiplied by k - i + 1, and
 * none is smaller than the one before.
 * @returns in the order given, none above 1; NaN stays, and counts for nothing
 */
export function holm(ps: readonly number[]): number[] {
  const adjusted = ps.map(() => NaN),
    order = ps.map((p, i) => ({ p, i })).filter(({ p }) => !Number.isNaN(p));
  let most = 0;
  order
    .sort((a, b) => a.p - b.p)
    .forEach(({ p, i }, rank) => {
      most = Math.max(most, Math.min(1, p * (order.length - rank)));
      adjusted[i] = most;
    });
  return adjusted;
}
