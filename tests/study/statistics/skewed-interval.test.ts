import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { boundsOf, isSame, widened } from '../../../src/study/statistics/estimate.js';
import { meanInterval, momentsOf } from '../../../src/study/statistics/interval.js';
import {
  amount,
  eventsInterval,
  greatestInterval,
  skewedInterval,
  unlessSeldom,
} from '../../../src/study/statistics/skewed-interval.js';

const LEVEL = 0.95;
const skewed = (values: readonly number[]) => skewedInterval(momentsOf(values), LEVEL);
const ones = (count: number, of: number): number[] =>
  Array.from({ length: of }, (_, i) => (i < count ? 1 : 0));

describe('the interval of a mean of skewed values', () => {
  it('is that of Student where they are even about their mean', () => {
    // 20 values, two at each of ten places the same way to either side.
    const values = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].flatMap((x) => [x, x]),
      { low, high } = skewed(values),
      student = meanInterval(values, LEVEL);
    // Evenly spread values are less spread than normal ones at their ends: they count less, 16.2 of 20.
    expect(low).toBeLessThanOrEqual(student.low!);
    expect(low! / student.low!).toBeCloseTo(1, 1);
    expect(high! - 5.5).toBeCloseTo(5.5 - low!, 12);
  });

  it('ends where the cubic of Hall 1992 comes to Student points, by the moments of a library', () => {
    // Squares of 1 .. 20: skewed to the right.
    const values = Array.from({ length: 20 }, (_, i) => (i + 1) ** 2),
      n = values.length,
      middle = mean(values),
      s = sampleStandardDeviation(values),
      second = mean(values.map((x) => (x - middle) ** 2)),
      g = mean(values.map((x) => (x - middle) ** 3)) / second ** 1.5;
    // Least value 1, mean 143.5: nearer than the greatest, 400. Blom's z for 20: 0.969136 quantile, 1.868247.
    const carrying = (n * 142.5 ** 2) / (142.5 ** 2 + second),
      normal = (n * 1.868247 ** 2) / (1.868247 ** 2 + 19 / 20),
      t = tQuantile(0.975, (n * carrying) / normal - 1);
    const cubic = (bound: number): number => {
      const T = (middle - bound) / s;
      return Math.sqrt(n) * (T + (g * T ** 2) / 3 + (g ** 2 * T ** 3) / 27 + g / (6 * n));
    };
    const { low, high } = skewed(values);
    expect(cubic(low!)).toBeCloseTo(t, 5);
    expect(cubic(high!)).toBeCloseTo(-t, 5);
    // Further out to the side of the long tail.
    expect(high! - middle).toBeGreaterThan(1.2 * (middle - low!));
  });

  it('mirrors with its values', () => {
    const values = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9],
      { low, high } = skewed(values),
      mirrored = skewed(values.map((x) => -x));
    expect([mirrored.low, mirrored.high]).toEqual([expect.closeTo(-high!, 10), expect.closeTo(-low!, 10)]);
  });

  it('is none where the mean hangs on fewer than five replications, and says how many would do', () => {
    // 2 of 20: for eight it takes four times as many. The zeros of a share that is mostly 1 count alike.
    expect(skewed(ones(2, 20))).toMatchObject({ low: null, high: null, needs: 80 });
    expect(skewed(ones(18, 20))).toMatchObject({ low: null, needs: 80 });
    expect(skewed(ones(1, 30)).needs).toBe(240);
    expect(skewed(ones(5, 20)).needs).toBeUndefined();
    expect(skewed(ones(5, 20)).low).not.toBeNull();
    // Of a few replications all but one must differ.
    expect(skewed([1, 2, 4]).low).not.toBeNull();
    expect(skewed([1, 1, 4]).needs).toBe(24);
    expect(boundsOf(skewed(ones(2, 20)))).toEqual({ low: -Infinity, high: Infinity });
  });

  it('is none where all values are the same but for rounding, which is neither too few nor doubt', () => {
    const same = skewed([0.1 + 0.2, 0.3, 0.3, 0.3]);
    expect(same).toMatchObject({ low: null, high: null, n: 4 });
    expect(isSame(same)).toBe(true);
    expect(isSame(skewed([5]))).toBe(false);
    expect(isSame(skewed(ones(1, 20)))).toBe(false);
    // What is told by bounds may take it for the mean, so that a build without chance is judged too.
    expect(boundsOf(skewed([4, 4]))).toEqual({ low: 4, high: 4 });
    expect(boundsOf(skewed([4]))).toEqual({ low: -Infinity, high: Infinity });
    expect(widened(skewed([4, 4]), 0.5)).toMatchObject({ low: 3.5, high: 4.5 });
    expect(widened(skewed([4]), 0.5)).toMatchObject({ low: null, high: null });
  });

  it('of amounts does not go below 0', () => {
    expect(amount([0, 1], LEVEL).low).toBe(0);
  });
});

describe('events that were not seen', () => {
  it('may still be up to 3 / n a replication (Hanley & Lippman-Hand 1983): 0.15 in 20, 0.03 in 100', () => {
    const none = (n: number) => eventsInterval(momentsOf(ones(0, n)), LEVEL);
    expect(none(20)).toMatchObject({ mean: 0, low: null, high: null, n: 20 });
    // A Poisson count of that mean is 0 in all of them with chance 5 %.
    expect(Math.exp(-20 * none(20).most!)).toBeCloseTo(0.05, 12);
    expect(none(20).most).toBeCloseTo(3 / 20, 3);
    expect(none(100).most).toBeCloseTo(3 / 100, 3);
    expect(eventsInterval(momentsOf([]), LEVEL)).toEqual({
      mean: 0,
      low: null,
      high: null,
      level: LEVEL,
      n: 0,
    });
  });

  it('that were seen have the interval of any mean', () => {
    expect(eventsInterval(momentsOf(ones(6, 20)), LEVEL)).toEqual(amount(ones(6, 20), LEVEL));
  });
});

describe('the mean over time of what is seldom', () => {
  it('is told where all replications together saw half a hundredth of one', () => {
    // 20 replications of 0.03 % are 0.6 % of one; of 0.02 % they are 0.4 %, and 50 are 1 %.
    const seen = (mean: number) => ({ mean, low: mean / 2, high: 2 * mean, level: LEVEL, n: 20 });
    expect(unlessSeldom(seen(0.0003))).toEqual(seen(0.0003));
    expect(unlessSeldom(seen(0.0002))).toMatchObject({ mean: 0.0002, low: null, high: null, needs: 50 });
    expect(unlessSeldom(skewed([0, 0]))).toEqual(skewed([0, 0]));
  });
});

describe('the mean of the greatest of several values', () => {
  it('is told from 200 replications on', () => {
    const values = Array.from({ length: 200 }, (_, i) => 1 + (i % 7) ** 2),
      of = (n: number) => greatestInterval(momentsOf(values.slice(0, n)), LEVEL);
    expect(of(200)).toEqual(amount(values, LEVEL));
    expect(of(199)).toMatchObject({ mean: amount(values.slice(0, 199), LEVEL).mean, low: null, needs: 200 });
    expect(of(1).needs).toBeUndefined();
    expect(isSame(greatestInterval(momentsOf([3, 3, 3]), LEVEL))).toBe(true);
  });
});
