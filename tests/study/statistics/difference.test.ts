import { describe, expect, it } from 'vitest';
import { difference, familyLevel } from '../../../src/study/statistics/difference.js';

describe('paired differences', () => {
  it('give the interval of the textbook paired t test', () => {
    // Sleep data of Student (1908, Biometrika 6, 1-25), hours gained with two drugs on ten patients, as in
    // R's `sleep`; from memory. R: t.test(extra ~ group, paired = TRUE): mean of differences 1.58, 95 %
    // interval 0.7001142 to 2.4598858.
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0],
      second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const { difference: d } = difference(first, second, 0.95);
    expect(d.mean).toBeCloseTo(1.58, 10);
    expect(d.low).toBeCloseTo(0.7001142, 7);
    expect(d.high).toBeCloseTo(2.4598858, 7);
    expect(d.n).toBe(10);
  });

  it('tell what pairing gains as a ratio of variances', () => {
    // Variances 1 and 1; differences 0.5, 0, -0.5 have variance 0.25: ratio 8.
    expect(difference([1, 2, 3], [1.5, 2, 2.5], 0.95).pairingGain).toBeCloseTo((1 + 0.25) / 0.25, 12);
  });

  it('leave out a pair of which one value is missing', () => {
    expect(difference([1, NaN, 3, 4], [2, 2, 4, NaN], 0.95).difference).toMatchObject({ mean: 1, n: 2 });
  });

  it('know no gain where all differences are equal', () => {
    expect(difference([1, 2], [2, 3], 0.95)).toMatchObject({
      pairingGain: null,
      difference: { mean: 1, low: 1, high: 1 },
    });
  });

  it('refuse series of unequal length', () => {
    expect(() => difference([1], [1, 2], 0.95)).toThrow(
      'difference: expected as many values of both, got 1 and 2',
    );
  });

  it('share the risk among several comparisons', () => {
    expect(familyLevel(0.95, 5)).toBeCloseTo(0.99, 12);
    expect(familyLevel(0.95, 1)).toBe(0.95);
  });
});
