import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { type Estimate, mapped } from './estimate.js';
import { Moments } from './moments.js';

/**
 * Mean over replications with its Student-t interval, mean +- t(n - 1) s / sqrt(n) (Student 1908; Law 2015,
 * ch. 9): for differences, which pairing makes even. What may be skewed or rare has `skewedInterval`. Values
 * that are not numbers (nothing was shipped, nobody came) are left out, and `n` counts the others. Below two
 * there is no interval; of none the mean is 0 and `n` is 0.
 * @param level confidence, above 0 and below 1
 */
export function intervalOf({ n, mean, variance }: Moments, level: number): Estimate {
  if (n < 2) return { mean, low: null, high: null, level, n };
  const half = tQuantile((1 + level) / 2, n - 1) * Math.sqrt(variance / n);
  return { mean, low: mean - half, high: mean + half, level, n };
}

/** The same of values that are at hand. */
export const meanInterval = (values: readonly number[], level: number): Estimate =>
  intervalOf(momentsOf(values), level);

export function momentsOf(values: readonly number[]): Moments {
  const moments = new Moments();
  for (const value of values) moments.add(value);
  return moments;
}

/** Of what cannot be below 0 (counts, times): the interval is cut there. */
export const asAmount = (estimate: Estimate): Estimate => within(estimate, Infinity);

/** Of shares: the interval is cut to 0..1, and so are rounding errors of the mean. */
export const asShare = (estimate: Estimate): Estimate => within(estimate, 1);

const within = (estimate: Estimate, most: number): Estimate =>
  mapped(estimate, (value) => Math.min(most, Math.max(0, value)));
