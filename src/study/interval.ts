import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { mean, sampleVariance } from 'simple-statistics';
import type { Estimate } from './results.js';

/**
 * Mean over replications with its Student-t interval, mean +- t(n - 1) s / sqrt(n) (Student 1908; Law 2015, ch. 9).
 * Values that are not numbers (nothing was shipped, nobody came) are left out, and `n` counts the others. Below two there
 * is no interval; of none the mean is 0 and `n` is 0.
 * @param level confidence, above 0 and below 1
 */
export function meanInterval(values: readonly number[], level: number): Estimate {
  const known = values.filter((value) => Number.isFinite(value)), n = known.length;
  if (n === 0) return { mean: 0, low: null, high: null, level, n };
  const middle = mean(known);
  if (n === 1) return { mean: middle, low: null, high: null, level, n };
  const half = tQuantile((1 + level) / 2, n - 1) * Math.sqrt(sampleVariance(known) / n);
  return { mean: middle, low: middle - half, high: middle + half, level, n };
}

/** The same for what cannot be below 0 (counts, times): the interval is cut there. */
export const amount = (values: readonly number[], level: number): Estimate => within(meanInterval(values, level), Infinity);

/** The same for shares: the interval is cut to 0..1, and so are rounding errors of the mean. */
export const share = (values: readonly number[], level: number): Estimate => within(meanInterval(values, level), 1);

function within({ mean: middle, low, high, level, n }: Estimate, most: number): Estimate {
  const cut = (value: number): number => Math.min(most, Math.max(0, value));
  return { mean: cut(middle), low: low === null ? null : cut(low), high: high === null ? null : cut(high), level, n };
}
