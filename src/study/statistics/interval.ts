import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { type Estimate, mapped } from './estimate.js';

/**
 * Number, mean and variance of values that come one at a time and are not kept (Welford 1962, Technometrics
 * 4(3), 419-420). Values that are not finite are left out.
 */
export class Moments {
  private count = 0;
  private middle = 0;
  private squares = 0;

  add(value: number): void {
    if (!Number.isFinite(value)) return;
    const before = value - this.middle;
    this.count++;
    this.middle += before / this.count;
    this.squares += before * (value - this.middle);
  }

  /** Values seen. */
  get n(): number {
    return this.count;
  }

  /** 0 of none. */
  get mean(): number {
    return this.middle;
  }

  /** Sample variance, by n - 1; NaN of fewer than two. */
  get variance(): number {
    return this.count > 1 ? this.squares / (this.count - 1) : NaN;
  }
}

/**
 * Mean over replications with its Student-t interval, mean +- t(n - 1) s / sqrt(n) (Student 1908; Law 2015,
 * ch. 9). Values that are not numbers (nothing was shipped, nobody came) are left out, and `n` counts the
 * others. Below two there is no interval; of none the mean is 0 and `n` is 0.
 * @param level confidence, above 0 and below 1
 */
export function intervalOf({ n, mean, variance }: Moments, level: number): Estimate {
  if (n < 2) return { mean, low: null, high: null, level, n };
  const half = tQuantile((1 + level) / 2, n - 1) * Math.sqrt(variance / n);
  return { mean, low: mean - half, high: mean + half, level, n };
}

/** The same of values that are at hand. */
export function meanInterval(values: readonly number[], level: number): Estimate {
  const moments = new Moments();
  for (const value of values) moments.add(value);
  return intervalOf(moments, level);
}

/** Of what cannot be below 0 (counts, times): the interval is cut there. */
export const asAmount = (estimate: Estimate): Estimate => within(estimate, Infinity);

/** Of shares: the interval is cut to 0..1, and so are rounding errors of the mean. */
export const asShare = (estimate: Estimate): Estimate => within(estimate, 1);

/** Mean over replications of what cannot be below 0. */
export const amount = (values: readonly number[], level: number): Estimate =>
  asAmount(meanInterval(values, level));

const within = (estimate: Estimate, most: number): Estimate =>
  mapped(estimate, (value) => Math.min(most, Math.max(0, value)));
