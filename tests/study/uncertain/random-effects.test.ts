import { describe, expect, it } from 'vitest';
import { fQuantile, randomEffects } from '../../../src/study/uncertain/random-effects.js';

// Expected values: R 4.2.2, anova(aov(y ~ g)), qf and qt, on these twelve numbers (made up).
const GROUPS = [
  [3.41, 3.52],
  [3.18, 3.05],
  [3.77, 3.69],
  [3.3, 3.44],
  [2.95, 3.12],
  [3.61, 3.4],
];

describe('one-way analysis of variance with random effects', () => {
  it('has the mean squares of aov of R, and what follows of them', () => {
    const found = randomEffects(GROUPS, 0.95);
    expect(found.mean).toBeCloseTo(3.37, 12);
    expect(found.between).toBeCloseTo(0.13364, 12);
    expect(found.within).toBeCloseTo(0.0106666666667, 12);
    expect(found.ofGroups).toBeCloseTo(0.0614866666667, 12);
    expect(found.half).toBeCloseTo(0.71772498494, 10);
    expect(found.halfWithin).toBeCloseTo(0.0729528164548, 10);
  });

  it('gives the share of the groups an interval by the quantiles of F', () => {
    const { shareOfValue, shareOfInterval } = randomEffects(GROUPS, 0.95);
    expect(shareOfValue?.low).toBeCloseTo(0.353266015912, 8);
    expect(shareOfValue?.high).toBeCloseTo(0.977381164581, 8);
    expect(shareOfInterval?.share).toBeCloseTo(0.846651673016, 10);
    expect(shareOfInterval?.low).toBeCloseTo(0.758019467315, 8);
    expect(shareOfInterval?.high).toBeCloseTo(0.855728320686, 8);
  });

  it.each([
    [0.975, 5, 6, 5.9875651260469],
    [0.025, 5, 6, 0.1433136611844],
    [0.9, 19, 20, 1.8021854119679],
  ])('quantile %f of F with %i and %i degrees of freedom is that of qf', (p, a, b, expected) => {
    expect(fQuantile(p, a, b)).toBeCloseTo(expected, 8);
  });

  it('gives the groups no variance below 0', () => {
    const found = randomEffects(
      [
        [1, 2],
        [2.1, 0.9],
        [1.2, 1.9],
        [1.5, 1.6],
      ],
      0.95,
    );
    expect(found.between).toBeCloseTo(0.00166666666667, 12);
    expect(found.within).toBeCloseTo(0.3675, 12);
    expect(found.ofGroups).toBe(0);
    expect(found.half).toBeCloseTo(0.102713012838, 10);
    expect(found.shareOfValue).toMatchObject({ share: 0, low: 0 });
  });

  it('tells nothing of one group, and no share where nothing differs', () => {
    expect(randomEffects([[1, 2]], 0.95).half).toBeNull();
    expect(
      randomEffects(
        [
          [2, 2],
          [2, 2],
        ],
        0.95,
      ),
    ).toMatchObject({ half: 0, shareOfValue: null });
    expect(() => randomEffects([[1, 2], [1]], 0.95)).toThrow(RangeError);
  });
});
