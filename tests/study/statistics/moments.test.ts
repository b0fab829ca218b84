import { mean, sampleSkewness, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Moments } from '../../../src/study/statistics/moments.js';

const momentsOf = (values: readonly number[]): Moments => {
  const moments = new Moments();
  for (const value of values) moments.add(value);
  return moments;
};

describe('moments of values that are not kept', () => {
  it.each([
    [[3.1, 4.1, 5.9, 2.6, 5.3, 5.8]],
    [Array.from({ length: 1000 }, (_, i) => 1e6 + Math.sin(i))],
    [Array.from({ length: 500 }, (_, i) => 10 ** (i % 7))],
  ])('are those of a library that has them all at hand', (values) => {
    const { n, mean: middle, variance, skewness, range, magnitude } = momentsOf(values);
    expect(n).toBe(values.length);
    expect(middle / mean(values)).toBeCloseTo(1, 12);
    expect(variance / sampleVariance(values)).toBeCloseTo(1, 10);
    // The library corrects for the number: sqrt(n (n - 1)) / (n - 2) times as much (Fisher-Pearson).
    const correction = Math.sqrt(n * (n - 1)) / (n - 2);
    expect(skewness * correction).toBeCloseTo(sampleSkewness(values), 8);
    expect([range, magnitude]).toEqual([Math.max(...values) - Math.min(...values), Math.max(...values)]);
  });

  it('of equal values have no variance at all', () => {
    expect(momentsOf(new Array<number>(777).fill(0.1)).variance).toBe(0);
    expect(momentsOf(new Array<number>(777).fill(0.1)).mean).toBe(0.1);
  });

  it('know how many values carry the mean, and how many are not the commonest of what is rare', () => {
    const rare = (ones: number, of: number): number[] =>
      Array.from({ length: of }, (_, i) => (i < ones ? 1 : 0));
    expect(momentsOf(rare(3, 20)).carrying).toBeCloseTo(3, 12);
    expect(momentsOf(rare(17, 20)).carrying).toBeCloseTo(3, 12);
    expect([3, 17, 10].map((ones) => momentsOf(rare(ones, 20)).unlike)).toEqual([3, 3, 10]);
    expect(momentsOf([4, 4, 4]).unlike).toBe(0);
    // 0, 1, .. 9: 4.5 from the least, mean square about the mean 8.25.
    expect(momentsOf([...Array(10).keys()]).carrying).toBeCloseTo((10 * 4.5 ** 2) / (4.5 ** 2 + 8.25), 12);
    // Ties at the ends count, those in between do not.
    expect(momentsOf([2, 1, 1, 3, 3, 3, 2, 2, 2, 2]).unlike).toBe(7);
  });

  it('leave out what is not finite, and know no variance of fewer than two', () => {
    const { n, mean: middle } = momentsOf([NaN, 2, Infinity, 4, -Infinity]);
    expect([n, middle]).toEqual([2, 3]);
    expect(momentsOf([5]).variance).toBeNaN();
    expect([momentsOf([]).n, momentsOf([]).mean, momentsOf([]).range, momentsOf([]).magnitude]).toEqual([
      0, 0, 0, 0,
    ]);
  });
});
