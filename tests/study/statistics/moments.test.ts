import { mean, sampleVariance } from 'simple-statistics';
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
    const { n, mean: middle, variance } = momentsOf(values);
    expect(n).toBe(values.length);
    expect(middle / mean(values)).toBeCloseTo(1, 12);
    expect(variance / sampleVariance(values)).toBeCloseTo(1, 10);
  });

  it('of equal values have no variance at all', () => {
    expect(momentsOf(new Array<number>(777).fill(0.1)).variance).toBe(0);
    expect(momentsOf(new Array<number>(777).fill(0.1)).mean).toBe(0.1);
  });

  it('leave out what is not finite, and know no variance of fewer than two', () => {
    const { n, mean: middle } = momentsOf([NaN, 2, Infinity, 4, -Infinity]);
    expect([n, middle]).toEqual([2, 3]);
    expect(momentsOf([5]).variance).toBeNaN();
    expect([momentsOf([]).n, momentsOf([]).mean]).toEqual([0, 0]);
  });
});
