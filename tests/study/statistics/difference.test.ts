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

  it('know no gain where they differ only by rounding', () => {
    // All are 0.29 up to 1e-12, and up to what ten digits leave of 1.45 and 3.45.
    const base = [3.45, 1.2, 2.6, 4.01];
    for (const off of [1e-12, 1e-10, 2e-9])
      expect(
        difference(
          base,
          base.map((value, r) => value + 0.29 + (r % 2) * off),
          0.95,
        ).pairingGain,
      ).toBeNull();
    const thirds = [1, 2, 4, 5].map((n) => n / 3),
      tenDigits = (value: number): number => Number(value.toPrecision(10));
    expect(
      difference(
        thirds.map(tenDigits),
        thirds.map((value) => tenDigits(value + 1 / 7)),
        0.95,
      ).pairingGain,
    ).toBeNull();
    // The same series a thousandth apart: variances 2 x v over (0.001)^2 / 3.
    const v = [3.45, 1.2, 2.6, 4.01].reduce((sum, value) => sum + (value - 2.815) ** 2, 0) / 3,
      apart = base.map((value, r) => value + (r % 2) * 0.001),
      mean = apart.reduce((sum, value) => sum + value, 0) / 4,
      w = apart.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 3;
    expect(difference(base, apart, 0.95).pairingGain).toBeCloseTo((v + w) / (0.001 ** 2 / 3), -1);
  });

  it('know no gain where all are zero', () => {
    expect(difference([0, 0], [0, 0], 0.95).pairingGain).toBeNull();
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
