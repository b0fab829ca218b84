import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { asAmount, asShare, meanInterval } from '../../../src/study/statistics/interval.js';

describe('Student t upper points', () => {
  // The usual printed table (Student 1908; Fisher & Yates 1938), three decimals, from memory.
  it.each([
    [0.975, 1, 12.706],
    [0.975, 5, 2.571],
    [0.975, 9, 2.262],
    [0.975, 10, 2.228],
    [0.975, 19, 2.093],
    [0.975, 29, 2.045],
    [0.975, 30, 2.042],
    [0.975, 120, 1.98],
    [0.95, 5, 2.015],
    [0.95, 9, 1.833],
    [0.95, 19, 1.729],
    [0.95, 29, 1.699],
  ])('at %d with %d degrees of freedom is %d in the printed table', (p, degrees, printed) => {
    expect(tQuantile(p, degrees)).toBeCloseTo(printed, 3);
  });
});

describe('mean and interval over replications', () => {
  // NIST StRD univariate summary statistics; the data follow their published pattern, built from memory.
  const alternating = (base: number): number[] => [
    base,
    ...Array.from({ length: 1000 }, (_, i) => base + (i % 2 === 0 ? -0.1 : 0.1)),
  ];
  it.each([
    ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1],
    ['NumAcc2', alternating(1.2), 1.2, 0.1],
    ['NumAcc3', alternating(1000000.2), 1000000.2, 0.1],
    ['NumAcc4', alternating(10000000.2), 10000000.2, 0.1],
  ])('reproduces the certified mean and standard deviation of NIST %s', (_, values, mean, deviation) => {
    const estimate = meanInterval(values, 0.95),
      half = (estimate.high! - estimate.low!) / 2;
    expect(estimate.mean).toBeCloseTo(mean, 8);
    // At 1e7 a float has nine decimals, so base +- 0.1 is itself off by 1e-9: 1e-7 of the deviation is what
    // can be asked.
    expect(sampleStandardDeviation(values) / deviation).toBeCloseTo(1, 7);
    // The bounds themselves are floats near 1e7, and half is their difference: 1e-6 of a half-width near
    // 0.006.
    expect((half * Math.sqrt(values.length)) / tQuantile(0.975, values.length - 1) / deviation).toBeCloseTo(
      1,
      5,
    );
  });

  it('is mean +- t s / sqrt(n): 1, 2, 3 gives 2 +- 4.303 / sqrt(3)', () => {
    // t(0.975, 2) = 4.303 is in any printed table; s = 1.
    const { mean, low, high, n } = meanInterval([1, 2, 3], 0.95);
    expect([mean, n]).toEqual([2, 3]);
    expect(high! - 2).toBeCloseTo(4.303 / Math.sqrt(3), 3);
    expect(2 - low!).toBeCloseTo(4.303 / Math.sqrt(3), 3);
  });

  it('has no interval with one value, and says with n what was left out', () => {
    expect(meanInterval([7], 0.95)).toEqual({ mean: 7, low: null, high: null, level: 0.95, n: 1 });
    expect(meanInterval([NaN, 5, NaN, 5], 0.9)).toEqual({ mean: 5, low: 5, high: 5, level: 0.9, n: 2 });
    expect(meanInterval([NaN, Infinity], 0.95)).toEqual({
      mean: 0,
      low: null,
      high: null,
      level: 0.95,
      n: 0,
    });
  });

  it('is cut to 0..1 for shares and at 0 for amounts', () => {
    expect(meanInterval([0, 1], 0.95).low).toBeLessThan(-5);
    expect(asShare(meanInterval([0, 1], 0.95))).toMatchObject({ mean: 0.5, low: 0, high: 1 });
    expect(asAmount(meanInterval([0, 1], 0.95)).low).toBe(0);
    expect(asAmount(meanInterval([0, 1], 0.95)).high).toBeGreaterThan(6);
  });

  it('leaves its values as they were', () => {
    const values = [3, 1, 2];
    meanInterval(values, 0.95);
    expect(values).toEqual([3, 1, 2]);
  });
});
