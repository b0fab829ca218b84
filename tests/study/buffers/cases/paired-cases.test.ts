import { describe, expect, it } from 'vitest';
import {
  keptOf,
  lessBy,
  moreOf,
  weakestOf,
  worstMoreOf,
} from '../../../../src/study/buffers/cases/paired-cases.js';
import { meanInterval } from '../../../../src/study/statistics/interval.js';
import { mean } from '../../../../src/study/statistics/sums.js';

const estimate = (low: number, high: number, middle = (low + high) / 2) => ({
  ...{ mean: middle, low, high },
  ...{ level: 0.99, n: 20 },
});

describe('what layouts keep in several cases', () => {
  it('is the ratio of the means, with no spread where both go alike', () => {
    expect(keptOf([1, 2, 3], [2, 4, 6])).toEqual([0.5, 0.5, 0.5]);
    const kept = keptOf([1, 2, 3], [2, 2, 5]);
    expect(mean(kept)).toBeCloseTo(6 / 9, 12);
    // By hand: 2/3 + (1 - 2/3 2) / 3.
    expect(kept[0]).toBeCloseTo(2 / 3 - 1 / 9, 12);
  });
  it('is all of it where nothing is to be had', () => {
    expect(keptOf([0, 0], [0, 0])).toEqual([1, 1]);
  });
  it('is least in one case by the means, and in each other one whose interval reaches as low', () => {
    const weakest = weakestOf([estimate(0.9, 0.98), estimate(0.91, 0.93), estimate(0.94, 0.96)]);
    expect(weakest).toMatchObject({ at: 1, orElse: [0], kept: { mean: 0.92, low: 0.9, high: 0.93 } });
  });
  it('is set against that of another layout in its own weakest case, and holds where all intervals do', () => {
    // One layout keeps 0.90 in both cases. The other keeps 0.95 in the first and 0.86 in the second: 0.04 less.
    const one = weakestOf([estimate(0.88, 0.92), estimate(0.88, 0.92)]),
      other = weakestOf([estimate(0.93, 0.97), estimate(0.84, 0.88)]);
    expect(one.orElse).toEqual([1]);
    expect(other.orElse).toEqual([]);
    const more = [
      [estimate(-0.06, -0.04), estimate(0.02, 0.06)],
      [estimate(-0.07, -0.03), estimate(0.03, 0.05)],
    ];
    // Whichever case is the weakest of the one, it keeps at least 0.02 more than the other in the second.
    const against = worstMoreOf(one, other, more);
    expect(against.mean).toBeCloseTo(0.04, 12);
    expect([against.low, against.high]).toEqual([0.02, 0.05]);
  });
  it('is known of another layout by the difference', () => {
    const other = lessBy(estimate(0.88, 0.92), estimate(0.03, 0.05));
    expect(other.mean).toBeCloseTo(0.86, 12);
    expect(other.low).toBeCloseTo(0.83, 12);
    expect(other.high).toBeCloseTo(0.89, 12);
  });
  it('has bounds that hold the truth in made-up cases, as often as the intervals hold together', () => {
    // Truth: the least of three means each; chance that both layouts share, and chance of their own.
    let seed = 7;
    const chance = (): number => (seed = (seed * 16807) % 2147483647) / 2147483647 - 0.5;
    const [ones, others] = [
      [0.9, 0.91, 0.905],
      [0.95, 0.885, 0.93],
    ];
    let missed = 0;
    for (let study = 0; study < 200; study++) {
      const [a, b] = [ones.map((): number[] => []), others.map((): number[] => [])];
      for (let r = 0; r < 12; r++) {
        const shared = 0.05 * chance();
        for (const c of ones.keys()) {
          a[c].push(ones[c] + shared + 0.02 * chance());
          b[c].push(others[c] + shared + 0.02 * chance());
        }
      }
      const level = 1 - 0.05 / 12,
        shares = a.map((row) => meanInterval(row, level)),
        more = a.map((row) => b.map((its) => moreOf(row, its, level))),
        one = weakestOf(shares),
        other = weakestOf(more.map((row, c) => lessBy(shares[c], row[c]))),
        { low, high } = worstMoreOf(one, other, more),
        truth = 0.9 - 0.885;
      if (low! > truth || high! < truth || one.kept.low! > 0.9 || one.kept.high! < 0.9) missed++;
    }
    expect(missed).toBeLessThanOrEqual(10);
  });
});
