import { describe, expect, it } from 'vitest';
import { mean, ratio, sum, sumOf } from '../../../src/study/statistics/sums.js';

describe('sums', () => {
  it('add up one value after the other, without compensation', () => {
    // ((1e16 + 1) + 1) - 1e16: each 1 is lost on its own, as 1e16 has no odd neighbour.
    expect(sum([1e16, 1, 1, -1e16])).toBe(0);
    expect(sumOf([1e16, 1, 1, -1e16], (each) => each)).toBe(0);
    expect(sum([])).toBe(0);
  });

  it('have a mean where there is a value, and a ratio where there is a whole', () => {
    expect(mean([1, 2, 6])).toBe(3);
    expect(mean([])).toBeNaN();
    expect([ratio(1, 4), ratio(1, 0)]).toEqual([0.25, NaN]);
  });
});
