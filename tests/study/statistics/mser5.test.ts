import { describe, expect, it } from 'vitest';
import { mser5 } from '../../../src/study/statistics/mser5.js';

describe('start-up cut MSER-5', () => {
  it('cuts the whole of a made-up ramp of 50 before a pattern of mean 0', () => {
    // The case of the collected check values: 50 are cut. Ramp from 50 down to 1, then a pattern of five that
    // adds to 0.
    const values = [
      ...Array.from({ length: 50 }, (_, i) => 50 - i),
      ...Array.from({ length: 200 }, (_, i) => [2, -1, 0, 1, -2][i % 5] + (i % 10 < 5 ? 0.1 : -0.1)),
    ];
    expect(mser5(values)).toMatchObject({ cut: 50, isTooShort: false });
  });

  it('takes the least of the statistic as the definition has it, by brute force', () => {
    // White 1997: sum of squares of what is left over the square of its number.
    const values = Array.from({ length: 103 }, (_, i) => 10 * Math.exp(-i / 9) + Math.sin(i * 12.9898) * 3);
    const means = Array.from(
      { length: 20 },
      (_, b) => values.slice(5 * b, 5 * b + 5).reduce((a, x) => a + x, 0) / 5,
    );
    const brute = means.slice(0, -1).map((_, d) => {
      const rest = means.slice(d),
        middle = rest.reduce((a, x) => a + x, 0) / rest.length;
      return rest.reduce((a, x) => a + (x - middle) ** 2, 0) / rest.length ** 2;
    });
    const { cut, statistic } = mser5(values);
    brute.forEach((each, d) => {
      expect(statistic[d]).toBeCloseTo(each, 10);
    });
    expect(cut).toBe(5 * brute.indexOf(Math.min(...brute)));
    expect(cut).toBeGreaterThan(0);
  });

  it('cuts nothing of a series without a start-up', () => {
    expect(mser5(Array.from({ length: 100 }, (_, i) => (i % 10 < 5 ? 1 : -1))).cut).toBe(0);
  });

  it('says that a series is too short that has not settled by its middle', () => {
    expect(mser5(Array.from({ length: 100 }, (_, i) => (i < 80 ? 100 - i : 20))).isTooShort).toBe(true);
  });

  it('refuses fewer than ten values', () => {
    expect(() => mser5([1, 2, 3])).toThrow('warm-up: expected at least 10 values, got 3');
  });
});
