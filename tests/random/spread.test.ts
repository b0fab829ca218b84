import { describe, expect, it } from 'vitest';
import { type Distribution, leastOf, meanOf, varianceOf } from '../../src/random/distribution.js';
import { gammaOf, lognormalOf, weibullOf } from '../../src/random/shapes.js';
import { spreadBy } from '../../src/random/spread.js';

const sdOf = (of: Distribution): number => Math.sqrt(varianceOf(of));
/** Every kind that has a spread, well away from 0. */
const kinds: Distribution[] = [
  { kind: 'uniform', low: 40, high: 60 },
  { kind: 'triangular', low: 35, likely: 42, high: 60 },
  { kind: 'pert', low: 35, likely: 42, high: 60 },
  { kind: 'exponential', mean: 50 },
  gammaOf(50, 0.4),
  lognormalOf(50, 0.4),
  weibullOf(50, 0.4),
  { kind: 'normal', mean: 42, sd: 8, low: 20, high: 55 },
  { kind: 'discrete', values: [40, 50, 70], weights: [0.2, 0.5, 0.3] },
  { kind: 'empirical', values: [38, 41, 47, 52, 66] },
  {
    kind: 'mixture',
    parts: [{ kind: 'constant', value: 40 }, gammaOf(60, 0.3), { kind: 'uniform', low: 45, high: 55 }],
    weights: [0.5, 0.2, 0.3],
  },
];

describe('a time with another spread', () => {
  it.each(kinds.flatMap((of) => [0.5, 1.4].map((factor) => [of.kind, factor, of] as const)))(
    'of kind %s, times %d: the mean stays, the standard deviation is so many times as large',
    (_, factor, of) => {
      const { distribution, isCut } = spreadBy(of, factor);
      expect(isCut).toBe(false);
      expect(meanOf(distribution)).toBeCloseTo(meanOf(of), 6);
      expect(sdOf(distribution) / sdOf(of)).toBeCloseTo(factor, 6);
      expect(distribution.kind).toBe(of.kind === 'exponential' ? 'gamma' : of.kind);
    },
  );

  it('stretches three points about their mean by hand: 6, 12, 30 have 14 in the mean of PERT', () => {
    expect(spreadBy({ kind: 'pert', low: 6, likely: 12, high: 30 }, 1.5).distribution).toEqual({
      kind: 'pert',
      low: 2,
      likely: 11,
      high: 38,
    });
  });

  it('leaves a fixed time, and a factor of 1, as they are; a factor of 0 leaves the mean alone', () => {
    const fixed: Distribution = { kind: 'constant', value: 20 };
    expect(spreadBy(fixed, 3)).toEqual({ distribution: fixed, isCut: false });
    for (const of of kinds) {
      expect(spreadBy(of, 1).distribution).toBe(of);
      const { distribution } = spreadBy(of, 0);
      expect(distribution.kind).toBe('constant');
      expect(meanOf(distribution)).toBeCloseTo(meanOf(of), 9);
    }
  });

  it('cuts at 0 what would fall below it, and keeps the mean: then the spread is less than asked', () => {
    const wide: Distribution[] = [
      { kind: 'uniform', low: 10, high: 30 },
      { kind: 'triangular', low: 5, likely: 8, high: 40 },
      { kind: 'pert', low: 5, likely: 8, high: 40 },
      { kind: 'normal', mean: 30, sd: 20, low: 0, high: 80 },
      { kind: 'discrete', values: [5, 50], weights: [0.5, 0.5] },
      { kind: 'empirical', values: [1, 10, 40] },
      { kind: 'mixture', parts: [gammaOf(10, 0.3), gammaOf(50, 0.3)], weights: [0.5, 0.5] },
      { kind: 'mixture', parts: [{ kind: 'constant', value: 20 }, gammaOf(120, 0.5)], weights: [0.8, 0.2] },
    ];
    for (const of of wide) {
      const { distribution, isCut } = spreadBy(of, 3);
      expect(isCut, of.kind).toBe(true);
      expect(leastOf(distribution)).toBe(0);
      expect(meanOf(distribution)).toBeCloseTo(meanOf(of), 6);
      expect(sdOf(distribution)).toBeGreaterThan(sdOf(of));
      expect(sdOf(distribution)).toBeLessThan(3 * sdOf(of));
    }
    // 1, 10 and 40 have 17; three times as far off are -31, -4 and 86: 0, 0 and 86 have 28.7, so all are 17/28.7.
    const { distribution } = spreadBy({ kind: 'empirical', values: [1, 10, 40] }, 3);
    expect(distribution).toEqual({ kind: 'empirical', values: [0, 0, expect.closeTo(51, 9)] });
  });

  it('refuses a distribution without meaning', () => {
    expect(() => spreadBy({ kind: 'uniform', low: 3, high: 2 }, 2)).toThrow(/uniform high: expected/);
  });
});
