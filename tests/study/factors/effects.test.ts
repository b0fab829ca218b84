import { describe, expect, it } from 'vitest';
import { combinations, FRACTIONS } from '../../../src/scenario/changes/fractions.js';
import { bestOf, nearestOf } from '../../../src/study/factors/best.js';
import { contrastsOf } from '../../../src/study/factors/contrasts.js';
import { effectIn } from '../../../src/study/factors/effects.js';

const MEASURE = {
  id: 'throughput',
  name: 'throughput',
  unit: 'units',
  better: 'more',
  zone: { share: 0.01, amount: 1 },
} as const;
/** The effects of one value a combination, twice, by their words and levels. */
function effectsOf(levels: number[], values: number[], fraction = null as (typeof FRACTIONS)[number] | null) {
  const all = combinations(levels, fraction);
  expect(values).toHaveLength(all.length);
  return contrastsOf(levels, all, fraction).map((contrast) => ({
    ...contrast,
    effect: effectIn(
      MEASURE,
      contrast,
      values.map((value) => [value, value]),
      100,
      0.95,
    ).difference.mean,
  }));
}
const byWord = (effects: ReturnType<typeof effectsOf>): Record<string, number> =>
  Object.fromEntries(effects.map(({ word, effect }) => [word, effect]));

/**
 * The pilot plant of Box, Hunter & Hunter 2005, Statistics for Experimenters, 2nd ed., table 5.3: yield by
 * temperature, concentration and catalyst in standard order, and its effects, T 23, C -5, K 1.5, TC 1.5, TK 10,
 * CK 0; data and effects from memory. There what two do is half a difference of differences, here all of it.
 */
const PILOT = [60, 72, 54, 68, 52, 83, 45, 80];

describe('the effects of a 2^3 design', () => {
  it('are those of the pilot plant of Box, Hunter and Hunter', () => {
    expect(byWord(effectsOf([2, 2, 2], PILOT))).toEqual({
      ...{ A: 23, B: -5, C: 1.5 },
      ...{ AB: 2 * 1.5, AC: 2 * 10, BC: 0 },
    });
  });

  it('are in half of it each the sum of what cannot be told apart, as the whole of it says', () => {
    const [half] = FRACTIONS,
      run = combinations([2, 2, 2], half),
      all = combinations([2, 2, 2], null);
    const values = run.map((levels) => PILOT[all.findIndex((each) => each.join() === levels.join())]),
      effects = effectsOf([2, 2, 2], values, half);
    // A + BC, B + AC, C + AB, by halves of the differences of differences.
    expect(byWord(effects)).toEqual({ A: 23 + 0, B: -5 + 10, C: 1.5 + 1.5 });
    expect(effects.map(({ mixedWith }) => mixedWith)).toEqual([['BC'], ['AC'], ['AB']]);
  });
});

describe('the effects of three levels', () => {
  it('are differences of any two levels by themselves, and from the first ones together, by hand', () => {
    // Rows of the second factor, two levels of the first: 10, 14 | 12, 20 | 13, 29.
    const effects = effectsOf([2, 3], [10, 14, 12, 20, 13, 29]);
    expect(effects.map(({ kind, from, to, effect }) => [kind, from.join(), to.join(), effect])).toEqual([
      ['alone', '0', '1', expect.closeTo((4 + 8 + 16) / 3, 12)],
      ['alone', '0', '1', 16 - 12],
      ['alone', '0', '2', 21 - 12],
      ['alone', '1', '2', 21 - 16],
      ['together', '0,0', '1,1', 8 - 4],
      ['together', '0,0', '1,2', 16 - 4],
    ]);
  });
});

describe('an effect in a measure', () => {
  const [contrast] = contrastsOf([2, 2], combinations([2, 2], null), null);
  it('has the Student interval of the effects within each replication, by hand, and is paired', () => {
    // Each combination goes up and down with the replication, the effect of A not: 4, 5 and 6.
    const values = [
      [10, 110, 60],
      [14, 115, 66],
      [20, 120, 70],
      [24, 125, 76],
    ];
    const { difference, pairingGain, verdict } = effectIn(MEASURE, contrast, values, 100, 0.95);
    // Mean 5, s 1, t(2; 0.975) = 4.303 (any table).
    expect(difference.mean).toBeCloseTo(5, 12);
    expect(difference.high! - 5).toBeCloseTo(4.3027 / Math.sqrt(3), 3);
    expect(pairingGain).toBeGreaterThan(1000);
    expect(verdict).toBe('better');
  });

  it('leaves a replication out in which a combination has no value', () => {
    const values = [
      [10, 10, 10],
      [14, NaN, 15],
      [10, 10, 10],
      [14, 14, 15],
    ];
    expect(effectIn(MEASURE, contrast, values, 100, 0.95).difference).toMatchObject({ n: 2, mean: 4.5 });
  });

  it('is nothing where only rounding is left', () => {
    const third = 1 / 3,
      values = [[0.1], [0.1 + third], [0.2], [0.2 + third]].map(([v]) => [v, v]);
    const [, , together] = contrastsOf([2, 2], combinations([2, 2], null), null);
    const { difference, words } = effectIn(MEASURE, together, values, 1, 0.95);
    expect(difference.mean).toBe(0);
    expect(words).toBe('the same in every replication');
  });
});

describe('the best combination', () => {
  it('is that of the greatest mean; those whose pairs with it are on both sides of 0 are not behind', () => {
    const values = [
      [1, 2, 3],
      [4, 5, 6],
      [4.1, 4.9, 5.9],
      [3.9, 5, 5.5],
    ];
    expect(bestOf(values, 0.95)).toEqual({ combination: 1, notBehind: [2, 3] });
    expect(bestOf(values.slice(0, 2), 0.95)).toEqual({ combination: 1, notBehind: [] });
  });

  it('has a nearest one with fewer changes of the scenario as it is, if there is one', () => {
    const levels = [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ];
    expect(nearestOf({ combination: 3, notBehind: [1] }, levels, [0, 0])).toBe(1);
    expect(nearestOf({ combination: 1, notBehind: [3] }, levels, [0, 0])).toBeNull();
    expect(nearestOf({ combination: 3, notBehind: [1] }, levels, undefined)).toBeNull();
  });
});
