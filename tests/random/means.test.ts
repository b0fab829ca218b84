import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import weibullQuantile from '@stdlib/stats-base-dists-weibull-quantile';
import { describe, expect, it } from 'vitest';
import { meanOf } from '../../src/random/distribution.js';

/**
 * Mean as the integral of the quantile function over 0 .. 1 by the midpoint rule: a way that knows no formula
 * of the mean.
 */
function meanOfQuantile(quantile: (p: number) => number, low = 0, high = 1): number {
  const n = 200_000;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += quantile(low + ((i + 0.5) / n) * (high - low));
  return sum / n;
}

describe('meanOf', () => {
  it('is the textbook mean of the simple kinds', () => {
    expect(meanOf({ kind: 'constant', value: 7 })).toBe(7);
    expect(meanOf({ kind: 'uniform', low: 2, high: 5 })).toBe(3.5);
    expect(meanOf({ kind: 'triangular', low: 1, likely: 2, high: 6 })).toBe(3);
    expect(meanOf({ kind: 'pert', low: 35, likely: 42, high: 61 })).toBe((35 + 168 + 61) / 6);
    expect(meanOf({ kind: 'exponential', mean: 9 })).toBe(9);
    expect(meanOf({ kind: 'gamma', shape: 4, scale: 2.5 })).toBe(10);
    expect(meanOf({ kind: 'discrete', values: [10, 30], weights: [1, 4] })).toBe(26);
    expect(meanOf({ kind: 'empirical', values: [1, 2, 6] })).toBe(3);
  });

  it('of a lognormal is exp(mu + sigma^2 / 2), so mean 42 and cv 0.3 come back', () => {
    const sigma2 = Math.log(1 + 0.3 ** 2);
    expect(
      meanOf({ kind: 'lognormal', mu: Math.log(42) - sigma2 / 2, sigma: Math.sqrt(sigma2) }),
    ).toBeCloseTo(42, 10);
  });

  it('of a Weibull with shape 2 is scale * sqrt(pi) / 2, and with shape 1 the scale', () => {
    expect(meanOf({ kind: 'weibull', shape: 2, scale: 3 })).toBeCloseTo((3 * Math.sqrt(Math.PI)) / 2, 10);
    expect(meanOf({ kind: 'weibull', shape: 1, scale: 3 })).toBeCloseTo(3, 10);
    expect(meanOf({ kind: 'weibull', shape: 0.5, scale: 3 })).toBeCloseTo(6, 9);
  });

  it('agrees with the integral of quantiles of @stdlib', () => {
    // The midpoint rule misses a little of the unbounded tail: 1e-3 of the mean covers it.
    expect(
      meanOf({ kind: 'weibull', shape: 1.7, scale: 10 }) / meanOfQuantile((p) => weibullQuantile(p, 1.7, 10)),
    ).toBeCloseTo(1, 3);
    expect(
      meanOf({ kind: 'gamma', shape: 1.7, scale: 10 }) / meanOfQuantile((p) => gammaQuantile(p, 1.7, 0.1)),
    ).toBeCloseTo(1, 3);
  });

  it('of a cut normal agrees with the integral of the quantile between the cuts', () => {
    // mean 10, sd 4, cut at 0 and 12: probabilities 0.00620967 and 0.69146246 (standard normal table at -2.5
    // and 0.5).
    const reference = meanOfQuantile((p) => normalQuantile(p, 10, 4), 0.0062096653, 0.6914624613);
    expect(meanOf({ kind: 'normal', mean: 10, sd: 4, low: 0, high: 12 })).toBeCloseTo(reference, 5);
  });

  it('of a normal cut far out in its tail stays between the cuts and near the inner one', () => {
    // Mills: beyond 30 sd the excess is near sd / 30 (with the next term 1 - 1/30^2).
    const mean = meanOf({ kind: 'normal', mean: 0, sd: 1, low: 30, high: Infinity });
    expect(mean - 30).toBeCloseTo((1 / 30) * (1 - 2 / 900), 5);
    expect(meanOf({ kind: 'normal', mean: 5, sd: 0, low: 0, high: Infinity })).toBe(5);
    expect(meanOf({ kind: 'normal', mean: 5, sd: 2, low: -Infinity, high: Infinity })).toBeCloseTo(5, 10);
  });
});
