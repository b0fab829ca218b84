import tQuantile from '@stdlib/stats-base-dists-t-quantile';

/** A share of replications with its Wilson interval. */
export interface Proportion {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly count: number;
  readonly n: number;
}

/** With so many degrees of freedom Student's t is the normal distribution, to 3e-9 in the 97.5 % point. */
const AS_NORMAL = 1e9;

/** Quantile of the standard normal distribution. */
export const normalQuantile = (p: number): number => tQuantile(p, AS_NORMAL);

/**
 * A share of replications with its score interval (Wilson 1927, J. Am. Stat. Assoc. 22, 209-212):
 * (p + z^2/2n +- z sqrt(p q / n + z^2/4n^2)) / (1 + z^2/n).
 * @param count of them, 0..n
 * @param n at least 1
 */
export function proportion(count: number, n: number, level: number): Proportion {
  if (!(n >= 1 && count >= 0 && count <= n))
    throw new RangeError(`proportion: expected 0 <= count <= n and n of at least 1, got ${count} of ${n}`);
  const z = normalQuantile((1 + level) / 2),
    p = count / n,
    scale = 1 + (z * z) / n;
  const middle = (p + (z * z) / (2 * n)) / scale,
    half = (z * Math.sqrt((p * (1 - p)) / n + (z * z) / (4 * n * n))) / scale;
  // Exactly 0 and 1 at the ends, where rounding may leave a hair.
  return {
    share: p,
    low: count === 0 ? 0 : middle - half,
    high: count === n ? 1 : middle + half,
    level,
    count,
    n,
  };
}
