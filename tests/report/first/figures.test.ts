import { describe, expect, it } from 'vitest';
import { figure, range, roundRange } from '../../../src/report/first/figures.js';
import { gain } from '../../../src/report/first/first.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';

const estimate = (mean: number, low: number | null, high: number | null): Estimate => ({
  ...{ mean, low, high },
  level: 0.95,
  n: 20,
});

describe('a figure of the first screen', () => {
  it.each([
    // Half-widths of 0.016, 0.057, 43, 183 and 1.5: steps of 0.01, 0.01, 10, 100 and 1.
    [estimate(3.44, 3.4239, 3.4558), '3.44', '3.42 to 3.46'],
    [estimate(0.3013, 0.2445, 0.3581), '0.30', '0.24 to 0.36'],
    [estimate(16481, 16437.2, 16523.6), '16,480', '16,440 to 16,520'],
    [estimate(902.6, 719.5, 1085.7), '900', '700 to 1,100'],
    [estimate(14.4, 12.9, 15.97), '14', '13 to 16'],
    [estimate(-0.001, -0.06, 0.058), '0.00', '-0.06 to 0.06'],
    // The same in every build, and none: as everywhere.
    [estimate(3.25, null, null), '3.25', 'always'],
    [{ ...estimate(3.25, null, null), n: 1 }, '3.25', 'no interval'],
  ])('%o has no digit more than its interval bears', (of, mean, interval) => {
    expect(figure(of)).toBe(mean);
    expect(range(of)).toBe(interval);
  });

  it.each([
    // Half-widths of 0.008, 0.04 and 13: a digit less makes them 0.02, 0.1 and 30 wide instead of 0.016, 0.08, 26.
    [estimate(3.959, 3.951, 3.967), '3.95 to 3.97'],
    [estimate(3.45, 3.41, 3.49), '3.4 to 3.5'],
    [estimate(-3.45, -3.49, -3.41), '-3.5 to -3.4'],
    [estimate(16043, 16031, 16057), '16,030 to 16,060'],
    // These would be half as wide again, or more.
    [estimate(3.44, 3.42, 3.46), '3.42 to 3.46'],
    [estimate(3.44, 3.415, 3.465), '3.42 to 3.47'],
    [estimate(4.8, 4.71, 4.91), '4.71 to 4.91'],
    [estimate(3.25, null, null), 'always'],
    [{ ...estimate(3.25, null, null), n: 1 }, 'no interval'],
  ])('%o has a digit less where that makes its interval hardly wider', (of, interval) => {
    expect(roundRange(of)).toBe(interval);
  });

  it('has as many decimals as the one beside it where that has more, and never fewer than by itself', () => {
    const fine = estimate(3.72, 3.701, 3.739),
      coarse = estimate(3.45, 3.41, 3.49);
    expect(roundRange(coarse, 1, fine)).toBe('3.41 to 3.49');
    expect(roundRange(fine, 1, coarse)).toBe(roundRange(fine));
    expect(roundRange(fine)).toBe('3.70 to 3.74');
    // Nothing to be like.
    expect(roundRange(coarse, 1, estimate(3.25, null, null))).toBe('3.4 to 3.5');
    expect(roundRange(estimate(3.25, null, null), 1, fine)).toBe('always');
    expect(roundRange(estimate(-0.34, -0.39, -0.29), 10, estimate(1, 0.99, 1.01))).toBe('-3.9 to -2.9');
  });

  it('has no zeros that only rounding brings', () => {
    expect(figure(estimate(0.6, 0.6 - 1e-15, 0.6 + 1e-15))).toBe('0.6');
  });

  it('is more or less by its sign, and both where chance may turn it', () => {
    expect(gain(estimate(0.3013, 0.2445, 0.3581), ' a day')).toBe('0.30 a day more (0.24 to 0.36)');
    expect(gain(estimate(-0.07, -0.1, -0.04))).toBe('0.07 less (0.04 to 0.10)');
    expect(gain(estimate(-0.044, -0.108, 0.019), ' a day')).toBe('between 0.11 a day less and 0.02 more');
    expect(gain(estimate(-0.5, null, null))).toBe('0.5 less in every build');
    expect(gain({ ...estimate(-0.5, null, null), n: 1 })).toBe('0.5 less (no interval)');
  });
});
