import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { isSame } from '../../../src/study/statistics/estimate.js';
import { type Histogram, PooledQuantiles } from '../../../src/study/statistics/pooled-quantile.js';
import { normals } from './normals.js';

/** Bins one wide; the units of a replication, one or more in each of some bins. */
const counts = (units: Readonly<Record<number, number>>): Histogram => {
  const bins = Object.keys(units).map(Number),
    first = Math.min(...bins),
    last = Math.max(...bins);
  return {
    first,
    bins: Array.from({ length: last - first + 1 }, (_, i) => units[first + i] ?? 0),
    least: first,
    greatest: last + 1,
  };
};
const pooled = (...replications: readonly Histogram[]): PooledQuantiles => {
  const quantiles = new PooledQuantiles((bin) => bin);
  for (const each of replications) quantiles.add(each);
  return quantiles;
};

describe('a quantile over the units of all replications', () => {
  it('is that of all together, not the mean of quantiles', () => {
    // 30 units of one replication evenly over 0 .. 3, 10 of the other over 9 .. 10: half of the 40 are through
    // at 2, nine in ten at 9.6; the means of the medians, 1.5 and 9.5, and of the P90s would be 5.5 and 6.3.
    const all = pooled(counts({ 0: 10, 1: 10, 2: 10 }), counts({ 9: 10 }));
    expect(all.estimate(0.5, 0.95, 1).mean).toBeCloseTo(2, 12);
    expect(all.estimate(0.9, 0.95, 1).mean).toBeCloseTo(9.6, 12);
    expect(all.estimate(0.5, 0.95, 2).mean).toBeCloseTo(1, 12);
  });

  it('has the interval of Woodruff 1952: where the share is p -+ t times its error as a ratio', () => {
    // Of ten units each, 4, 5, 6 and 5 are below 1, the others spread over 1 .. 2: the median is 1. With as many
    // units each the ratio is a mean of shares: its standard error is sd / sqrt(4).
    const all = pooled(...[4, 5, 6, 5].map((below) => counts({ 0: below, 1: 10 - below }))),
      half = (tQuantile(0.975, 3) * sampleStandardDeviation([0.4, 0.5, 0.6, 0.5])) / 2,
      { mean, low, high } = all.estimate(0.5, 0.95, 1);
    expect(mean).toBe(1);
    // 0.5 of the units lie in each bin, spread evenly.
    expect(low).toBeCloseTo((0.5 - half) / 0.5, 12);
    expect(high).toBeCloseTo(1 + half / 0.5, 12);
  });

  it('takes the replications by what they weigh: the error of a ratio, sum (N(x) - share N)^2', () => {
    // 3 of 10, 12 of 20 and 15 of 30: 30 of 60, so residuals of -2, 2 and 0.
    const all = pooled(counts({ 0: 3, 1: 7 }), counts({ 0: 12, 1: 8 }), counts({ 0: 15, 1: 15 })),
      half = (tQuantile(0.975, 2) * Math.sqrt((3 / 2) * (4 + 4 + 0))) / 60;
    expect(all.estimate(0.5, 0.95, 1).high).toBeCloseTo(1 + half / 0.5, 12);
  });

  it('has none where the share may be all or nothing, and says how many would do; nor where nothing differs', () => {
    // 8 and 10 of 10 are below 1: 0.9 +- 12.706 * 0.1. The tenth above is reached with 12.706^2 times as many.
    const few = pooled(counts({ 0: 8, 1: 2 }), counts({ 0: 10 })).estimate(0.9, 0.95, 1);
    expect(few).toMatchObject({ mean: 1, low: null, high: null, n: 2 });
    expect(few.needs).toBe(Math.floor(2 * 12.7062 ** 2) + 1);
    const same = pooled(counts({ 0: 8, 1: 2 }), counts({ 0: 8, 1: 2 })).estimate(0.5, 0.95, 1);
    expect(isSame(same)).toBe(true);
    expect(pooled(counts({ 3: 1 })).estimate(0.5, 0.95, 1)).toMatchObject({ low: null, n: 1 });
    expect(pooled().estimate(0.5, 0.95, 1)).toMatchObject({ mean: 0, n: 0 });
  });

  it('does not depend on the order in which bins are first met, and leaves out who has no units', () => {
    const parts = [counts({ 5: 2, 7: 1 }), counts({ 2: 4, 5: 1 }), counts({ 9: 3 }), counts({ 4: 2 })],
      none = { first: 0, bins: [], least: Infinity, greatest: 0 };
    for (const p of [0.2, 0.5, 0.8])
      expect(pooled(...parts.toReversed(), none).estimate(p, 0.95, 1)).toEqual(
        pooled(...parts).estimate(p, 0.95, 1),
      );
  });

  it('holds the median of units in 93 to 97 % of 2,000 studies of 20 replications that differ', () => {
    // A replication of 60 units is shifted by a normal value of its own, as large as the spread of its units:
    // the median of all is 0. 95 % of 2,000 has a standard deviation of 9.7, so the band is 4 of them wide.
    const normal = normals('units in clusters'),
      STUDIES = 2000;
    let held = 0;
    for (let study = 0; study < STUDIES; study++) {
      const quantiles = new PooledQuantiles((bin) => bin / 50);
      for (let r = 0; r < 20; r++) {
        const shift = normal(),
          units: Record<number, number> = {};
        for (let i = 0; i < 60; i++) {
          const bin = Math.floor(50 * (shift + normal()));
          units[bin] = (units[bin] ?? 0) + 1;
        }
        quantiles.add({ ...counts(units), least: -Infinity, greatest: Infinity });
      }
      const { low, high } = quantiles.estimate(0.5, 0.95, 1);
      if (low! <= 0 && high! >= 0) held++;
    }
    expect(held / STUDIES).toBeGreaterThan(0.93);
    expect(held / STUDIES).toBeLessThan(0.97);
  });
});
