import { describe, expect, it } from 'vitest';
import {
  kruskalWallis,
  optionEffects,
  warningsOfOptions,
} from '../../../../src/study/fit/warnings/options.js';
import { ranksOf } from '../../../../src/study/fit/warnings/ranks.js';
import { holm } from '../../../../src/study/statistics/difference.js';

/** Made up. */
const TIMES = [44, 37, 60, 52, 33, 48, 71, 39, 55, 42, 66, 41, 58, 47, 36, 62, 50, 45, 49, 40];

describe('ranks', () => {
  it('equal values share theirs', () => {
    expect([...ranksOf([3, 1, 3, 2, 3])]).toEqual([4, 1, 4, 2, 4]);
  });
});

describe('Kruskal and Wallis', () => {
  it('is that of R 4.2.2 on its own example (M. Hollander & D. A. Wolfe 1973, 116; from the help of kruskal.test)', () => {
    const { h, p } = kruskalWallis([
      [2.9, 3.0, 2.5, 2.6, 3.2],
      [3.8, 2.7, 4.0, 2.4],
      [2.8, 3.4, 3.7, 2.2, 2.0],
    ]);
    expect(h).toBeCloseTo(0.77142857, 8);
    expect(p).toBeCloseTo(0.6799648, 7);
  });

  it('is that of R 4.2.2 on the made-up times, in two groups and in four', () => {
    const inGroups = (k: number): number[][] =>
      Array.from({ length: k }, (_, g) => TIMES.filter((_time, i) => i % k === g));
    expect(kruskalWallis(inGroups(2))).toEqual({
      h: expect.closeTo(1.8514286, 7) as unknown,
      p: expect.closeTo(0.1736173, 7) as unknown,
    });
    expect(kruskalWallis(inGroups(4))).toEqual({
      h: expect.closeTo(2.8171429, 7) as unknown,
      p: expect.closeTo(0.4206857, 7) as unknown,
    });
  });

  it('of times that are all the same is nothing', () => {
    expect(
      kruskalWallis([
        [5, 5, 5],
        [5, 5],
      ]),
    ).toEqual({ h: 0, p: 1 });
  });
});

describe('Holm', () => {
  it('is p.adjust(method = "holm") of R 4.2.2', () => {
    expect(holm([0.01, 0.04, 0.03])).toEqual([0.03, 0.06, 0.06]);
  });

  it('does not count what was not tested', () => {
    expect(holm([0.01, NaN, 0.04])).toEqual([0.02, NaN, 0.04]);
  });
});

describe('effects of options', () => {
  const cab = TIMES.map((_, i) => (i % 5 < 2 ? 'long' : 'short')),
    times = TIMES.map((time, i) => (i % 5 < 2 ? 2 * time : time)),
    colour = TIMES.map((_, i) => ['red', 'white'][i % 2]);
  const [ofCab, ofColour] = optionEffects(times, { cab, colour });

  it('the one that doubles times is felt, the other is not', () => {
    expect(ofCab).toMatchObject({ option: 'cab', isFelt: true });
    expect(ofColour).toMatchObject({ option: 'colour', isFelt: false });
    expect(ofCab.adjusted).toBeCloseTo(2 * ofCab.p, 14);
  });

  it('the factor is that of the means, against the commonest value', () => {
    const [short, long] = ofCab.levels;
    expect(short).toMatchObject({ value: 'short', n: 12, factor: 1, low: null, high: null });
    expect(long).toMatchObject({ value: 'long', n: 8 });
    expect(long.factor).toBeCloseTo(long.mean / short.mean, 14);
    expect(long.low).toBeLessThan(2);
    expect(long.high).toBeGreaterThan(2);
    expect(warningsOfOptions([ofCab, ofColour])).toMatchObject([
      { option: 'cab', told: expect.stringContaining('against short, long takes ') as unknown },
    ]);
  });

  it('a value seen twice is in no test, and an unknown one in nothing', () => {
    const rare = TIMES.map((_, i) => (i < 2 ? 'odd' : i < 5 ? '' : 'plain')),
      [effect] = optionEffects(TIMES, { rare });
    expect(effect).toMatchObject({ h: NaN, isFelt: false });
    expect(effect.levels.map(({ value, n }) => [value, n])).toEqual([
      ['plain', 15],
      ['odd', 2],
    ]);
  });
});
