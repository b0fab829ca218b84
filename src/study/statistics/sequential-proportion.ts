import { log } from '../../random/elementary.js';
import type { Proportion } from './proportion.js';

/** Halvings of an interval below 1 until it is as narrow as a number can be. */
const HALVINGS = 60;

/**
 * A share of replications with bounds that hold at all times together, however often it is looked at: the
 * confidence sequence of Robbins (1970, Ann. Math. Stat. 41, 1397-1409; from memory) for a uniform mixture.
 * With k of n it holds all p for which (n + 1) C(n, k) p^k (1 - p)^(n - k) > 1 - level. By Ville's inequality
 * the true share is ever outside with a chance of 1 - level at most.
 * @param count of them, 0..n
 * @param n at least 1
 */
export function sequentialProportion(count: number, n: number, level: number): Proportion {
  let ways = log(n + 1) - log(1 - level);
  for (let i = 1; i <= count; i++) ways += log(n - count + i) - log(i);
  const isIn = (p: number): boolean =>
    ways + (count === 0 ? 0 : count * log(p)) + (count === n ? 0 : (n - count) * log(1 - p)) > 0;
  const share = count / n,
    // From the share, which is always in, to an end, which is not unless it is the share.
    bound = (end: number): number => {
      let inside = share,
        outside = end;
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (inside + outside) / 2;
        if (isIn(middle)) inside = middle;
        else outside = middle;
      }
      return outside;
    };
  return { share, low: bound(0), high: bound(1), level, count, n };
}
