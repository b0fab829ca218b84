import { describe, expect, it } from 'vitest';
import { effectOf, gainPerCost } from '../../../src/study/reliefs/effects.js';
import type { Compared } from '../../../src/study/reliefs/runs.js';

const rows = (throughput: readonly number[], cost: readonly number[]): Compared[] =>
  throughput.map((each, r) => ({ throughput: each, cost: cost[r], lastUnit: NaN }));
const base = rows([4, 4, 4], [10, 10, 10]);
const quotient = (row: readonly Compared[]): ReturnType<typeof gainPerCost> =>
  gainPerCost(base, row, effectOf(base, row, null, 0.95));

describe('the gain for each unit of cost', () => {
  it('is the mean gain over the mean rise in cost, with the interval of a ratio', () => {
    // Gains 1, 2, 3, rises 2, 2, 2: ratio 1; gain less ratio x rise, over the mean rise: -0.5, 0, 0.5,
    // standard deviation 0.5. Student at 2 degrees of freedom 4.302653 (table): half-width 4.302653 x 0.5 /
    // sqrt 3 = 1.242069.
    const found = quotient(rows([5, 6, 7], [12, 12, 12]));
    expect(found).toMatchObject({ mean: 1, level: 0.95, n: 3 });
    expect(found!.low).toBeCloseTo(1 - 1.242069, 5);
    expect(found!.high).toBeCloseTo(1 + 1.242069, 5);
  });

  it('is known exactly where cost rises with the gain in every replication', () => {
    // Gains 1.0, 1.1, 1.2 at four times the cost: 0.25 with nothing left over.
    const found = quotient(rows([5, 5.1, 5.2], [14, 14.4, 14.8]));
    for (const value of [found!.mean, found!.low!, found!.high!]) expect(value).toBeCloseTo(0.25, 9);
  });

  it('is the ratio of means, not the mean of ratios', () => {
    // Gains 1, 1, 4 (mean 2), rises 4, 5, 6 (mean 5, 95 % 2.52 to 7.48): 0.4; the mean of 0.25, 0.2, 0.667 is
    // 0.372.
    expect(quotient(rows([5, 5, 8], [14, 15, 16]))!.mean).toBeCloseTo(0.4, 12);
  });

  it('is not told where the unit may get no dearer, or has no cost', () => {
    // Rises 1, 2, 6: mean 3, half-width 6.57.
    expect(quotient(rows([5, 6, 7], [11, 12, 16]))).toBeNull();
    expect(quotient(rows([5, 6, 7], [9, 9, 9]))).toBeNull();
    expect(quotient(rows([5, 6, 7], [NaN, NaN, NaN]))).toBeNull();
  });
});
