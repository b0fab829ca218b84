import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { lognormalOf } from '../../../../src/random/shapes.js';
import { Draws } from '../../../../src/study/fit/goodness/draws.js';
import { twoNormals } from '../../../../src/study/fit/warnings/em.js';
import { farOut, warningOfOutliers } from '../../../../src/study/fit/warnings/outliers.js';
import { finestUnit, rounding, warningOfRounding } from '../../../../src/study/fit/warnings/rounding.js';

const drawn = (n: number, unit = 0, mean = 120): number[] => [
  ...new Draws(lognormalOf(mean, 0.35), n, 'times of these tests', unit).next(),
];

describe('rounding', () => {
  it.each([5, 10, 15, 30, 60])('to %d minutes is found, and no finer nor coarser unit', (unit) => {
    expect(rounding(drawn(60, unit, 8 * unit))?.unit).toBe(unit);
  });

  it('three in a hundred that were not rounded do not hide it', () => {
    const times = drawn(100, 15);
    times.splice(0, 3, 52, 97.5, 118);
    expect(warningOfRounding(times)).toMatchObject([
      {
        unit: 15,
        told: expect.stringMatching(/^9[78] of 100 times are whole multiples of 15 minutes/) as unknown,
      },
    ]);
  });

  it('times to the minute, or with all their digits, are not said to be rounded', () => {
    expect(rounding(drawn(60, 1))).toBeUndefined();
    expect(rounding(drawn(60, 0.1))).toBeUndefined();
    expect(rounding(drawn(60))).toBeUndefined();
  });

  it('four whole minutes that happen to be multiples of 5 are not enough against chance', () => {
    // 1 in 5^4 = 625.
    expect(rounding([40, 45, 55, 60])).toBeUndefined();
    expect(rounding([40, 45, 55, 60, 35, 65, 70])?.unit).toBe(5);
  });

  it('the unit in which they are written is told by their digits', () => {
    expect(finestUnit([40, 45, 55])).toBe(1);
    expect(finestUnit([40, 45.5, 55])).toBe(0.5);
    expect(finestUnit([40.1, 45.7])).toBe(0.1);
    expect(finestUnit([40 + 1 / 60, 41 + 7 / 60])).toBeCloseTo(1 / 60, 12);
    expect(finestUnit([Math.PI, Math.E])).toBe(0);
  });
});

describe('times far from all others', () => {
  const times = drawn(40, 0, 42);

  it('long and short ones are found by their places', () => {
    expect(farOut(times)).toEqual([]);
    expect(farOut([480, ...times, 0.5])).toEqual([0, 41]);
  });

  it('are told with their minutes, and that they are used', () => {
    expect(warningOfOutliers([...times, 480])).toMatchObject([
      {
        which: [40],
        told: expect.stringMatching(
          /^1 time lies far from all others: 480 min .* used all the same/,
        ) as unknown,
      },
    ]);
  });

  it('there are none where most are the same, nor of seven', () => {
    expect(farOut([...Array.from({ length: 20 }, () => 42), 50])).toEqual([]);
    expect(farOut([40, 41, 42, 43, 44, 45, 480])).toEqual([]);
  });
});

describe('two normals', () => {
  it('are those from which the values were made', () => {
    // Quantiles of N(0, 1) and N(10, 2), 200 and 100 of them.
    const values = Float64Array.from(
      [
        ...Array.from({ length: 200 }, (_, i) => normalQuantile((i + 0.5) / 200, 0, 1)),
        ...Array.from({ length: 100 }, (_, i) => 10 + 2 * normalQuantile((i + 0.5) / 100, 0, 1)),
      ].sort((a, b) => a - b),
    );
    const { share, means, sds } = twoNormals(values);
    expect(share).toBeCloseTo(2 / 3, 3);
    expect(means[0]).toBeCloseTo(0, 1);
    expect(means[1]).toBeCloseTo(10, 1);
    expect(sds[0]).toBeCloseTo(1, 1);
    expect(sds[1]).toBeCloseTo(2, 1);
  });

  it('no part is pulled together about equal values, where the likelihood has no end', () => {
    const { sds } = twoNormals(Float64Array.from([1, 2, 3, 4, 5, 5, 5, 5, 5, 6, 7, 8, 9, 12]));
    expect(Math.min(...sds)).toBeGreaterThan(0.3);
  });
});
