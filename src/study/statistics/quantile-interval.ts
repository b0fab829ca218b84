import { exp, log, log1p } from '../../random/elementary.js';
import { logGamma1p } from '../../random/log-gamma.js';

/** Ranks, 1 for the least of n values. */
export interface Ranks {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * Ranks of the order statistics that estimate a quantile and bound it, whatever the distribution: the number
 * of values at or below the quantile is binomial (n, p), and each tail beyond the bounds has at most (1 -
 * level) / 2 (David & Nagaraja 2003, Order Statistics, sec. 7.1; quoted from memory). `middle` is the inverse
 * of the empirical distribution, rank ceil(n p). null where n is too small for an equal-tailed interval.
 */
export function quantileRanks(n: number, p: number, level: number): Ranks | null {
  const key = `${n} ${p} ${level}`,
    known = ranksKnown.get(key) ?? reckon(n, p, level);
  // Asked for each unit of a programme anew.
  ranksKnown.set(key, known);
  return known;
}

const ranksKnown = new Map<string, Ranks | null>();

function reckon(n: number, p: number, level: number): Ranks | null {
  if (n < leastForQuantile(p, level)) return null;
  const tail = (1 - level) / 2;
  let low = 0,
    high = 0,
    atMost = 0;
  for (let k = 0; k < n && high === 0; k++) {
    atMost += binomial(n, k, p);
    // P(B <= k) <= tail: the quantile lies below value k + 1 with no more than that.
    if (atMost <= tail) low = k + 1;
    if (atMost >= 1 - tail) high = k + 1;
  }
  return { low: Math.max(1, low), middle: middleRank(n, p), high: high === 0 ? n : high };
}

/** Rank ceil(n p) of n values, the inverse of their empirical distribution. */
export const middleRank = (n: number, p: number): number => Math.max(1, Math.ceil(n * p - 1e-9));

/**
 * The least n with such an interval: both p^n and (1 - p)^n are at most (1 - level) / 2. 17 for P80 and 72
 * for P95 at 95 %.
 */
export function leastForQuantile(p: number, level: number): number {
  return Math.ceil(log((1 - level) / 2) / log(Math.max(p, 1 - p)));
}

/** P(B = k), by logarithms, as (1 - p)^n is below the least float for a large n. */
function binomial(n: number, k: number, p: number): number {
  return exp(logGamma1p(n) - logGamma1p(k) - logGamma1p(n - k) + k * log(p) + (n - k) * log1p(-p));
}
