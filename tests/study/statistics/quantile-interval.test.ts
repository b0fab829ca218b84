import { describe, expect, it } from 'vitest';
import { leastForQuantile, quantileRanks } from '../../../src/study/statistics/quantile-interval.js';

/** P(B <= k) with exact whole numbers: sums of binomial coefficients times powers, p as a fraction of 20. */
function exactCdf(n: number, k: number, twentieths: bigint): number {
  let sum = 0n,
    choose = 1n;
  for (let i = 0n; i <= BigInt(k); i++) {
    sum += choose * twentieths ** i * (20n - twentieths) ** (BigInt(n) - i);
    choose = (choose * (BigInt(n) - i)) / (i + 1n);
  }
  return Number((sum * 10n ** 15n) / 20n ** BigInt(n)) / 1e15;
}

describe('order statistics around a quantile', () => {
  it('need 17 replications for P80 and 72 for P95 at 95 %, equal-tailed', () => {
    // 0.8^16 = 0.0281 > 0.025 >= 0.8^17 = 0.0225; 0.95^71 = 0.0262 > 0.025 >= 0.95^72 = 0.0249.
    expect(quantileRanks(16, 0.8, 0.95)).toBeNull();
    expect(quantileRanks(17, 0.8, 0.95)).not.toBeNull();
    expect(quantileRanks(71, 0.95, 0.95)).toBeNull();
    expect(quantileRanks(72, 0.95, 0.95)).not.toBeNull();
    expect([leastForQuantile(0.8, 0.95), leastForQuantile(0.95, 0.95), leastForQuantile(0.5, 0.95)]).toEqual([
      17, 72, 6,
    ]);
  });

  // The table of ranks for the sign test's interval of a median, 95 % (Conover, Practical Nonparametric
  // Statistics), from memory.
  it.each([
    [6, 1, 6],
    [9, 2, 8],
    [10, 2, 9],
    [15, 4, 12],
    [20, 6, 15],
    [25, 8, 18],
  ])('of %d values, ranks %d and %d bound the median', (n, low, high) => {
    expect(quantileRanks(n, 0.5, 0.95)).toMatchObject({ low, high });
  });

  it.each([
    [17, 0.8],
    [40, 0.8],
    [40, 0.5],
    [72, 0.95],
    [200, 0.95],
  ])(
    'of %d values around p = %d leave at most 2.5 % in each tail, and one rank closer would leave more',
    (n, p) => {
      const { low, high, middle } = quantileRanks(n, p, 0.95)!,
        cdf = (k: number): number => exactCdf(n, k, BigInt(Math.round(p * 20)));
      expect(cdf(low - 1)).toBeLessThanOrEqual(0.025);
      expect(cdf(low)).toBeGreaterThan(0.025);
      expect(1 - cdf(high - 1)).toBeLessThanOrEqual(0.025);
      expect(1 - cdf(high - 2)).toBeGreaterThan(0.025);
      expect(middle).toBe(Math.ceil(Number((n * p).toFixed(9))));
    },
  );

  it('are found for ten thousand values, where 0.05^n is below every float', () => {
    const { low, high } = quantileRanks(10_000, 0.95, 0.95)!;
    // Normal approximation: 9500 +- 1.96 sqrt(10000 * 0.95 * 0.05) = 9500 +- 42.7; ranks are whole.
    expect(Math.abs(low - 9457.3)).toBeLessThan(2);
    expect(Math.abs(high - 9542.7)).toBeLessThan(2);
  });
});
