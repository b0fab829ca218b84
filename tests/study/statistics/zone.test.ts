import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../../src/study/statistics/estimate.js';
import { meanInterval } from '../../../src/study/statistics/interval.js';
import { type Standing, standingOf } from '../../../src/study/statistics/zone.js';
import { normals } from './normals.js';

const between = (low: number | null, high: number | null): Estimate => ({
  mean: ((low ?? 0) + (high ?? 0)) / 2,
  low,
  high,
  level: 0.95,
  n: low === null ? 1 : 9,
});

describe('where an interval lies against the zone', () => {
  it.each<[number | null, number | null, number, Standing]>([
    [1.1, 2, 1, 'more'],
    [1, 2, 1, 'at least a little more'],
    [0.1, 2, 1, 'at least a little more'],
    [0.1, 1, 1, 'within'],
    [-1, 1, 1, 'within'],
    [0, 0, 1, 'within'],
    [0, 1.1, 1, 'open'],
    [-0.1, 1.1, 1, 'open'],
    [-1.1, 1.1, 1, 'open'],
    [-1.1, 0, 1, 'open'],
    [-2, -0.1, 1, 'at least a little less'],
    [-2, -1, 1, 'at least a little less'],
    [-2, -1.1, 1, 'less'],
    // Any difference matters.
    [0, 0, 0, 'within'],
    [0.1, 2, 0, 'more'],
    [-2, -0.1, 0, 'less'],
    [0, 2, 0, 'open'],
    // One replication.
    [null, null, 1, 'open'],
  ])('of %d to %d with %d either way: %s', (low, high, zone, standing) => {
    expect(standingOf(between(low, high), zone)).toBe(standing);
  });
});

describe('standings by chance', () => {
  const PAIRS = 10,
    STUDIES = 20_000,
    ZONE = 1.5;
  /** Shares of studies of ten differences that are normal with standard deviation 1 around a mean. */
  const shares = (mean: number): ((standing: Standing) => number) => {
    const normal = normals(`zone ${mean}`),
      counts = new Map<Standing, number>();
    for (let study = 0; study < STUDIES; study++) {
      const values = Array.from({ length: PAIRS }, () => mean + normal()),
        standing = standingOf(meanInterval(values, 0.95), ZONE);
      counts.set(standing, (counts.get(standing) ?? 0) + 1);
    }
    return (standing) => (counts.get(standing) ?? 0) / STUDIES;
  };
  /** A right program is further off than this in 1 of 2000 such checks (3.5 standard deviations of the count). */
  const slack = (share: number): number => 3.5 * Math.sqrt((share * (1 - share)) / STUDIES);

  it('are "within" and "more" in 2.5 % of studies each where the true difference is the edge itself', () => {
    // Each is a one-sided t test at 2.5 % of a hypothesis that is just true, so of exactly this size (Schuirmann
    // 1987). The second test of the two does not bind: the other edge is 3 away, 9.5 standard errors.
    const share = shares(ZONE);
    expect(Math.abs(share('within') - 0.025)).toBeLessThanOrEqual(slack(0.025));
    expect(Math.abs(share('more') - 0.025)).toBeLessThanOrEqual(slack(0.025));
    expect(share('less') + share('at least a little less')).toBe(0);
  });

  it('say of no difference that there is one in at most 5 % of studies, and mostly that none matters', () => {
    const share = shares(0),
      wrong = 1 - share('within') - share('open');
    // Some of the 5 % of intervals without 0 lie within the zone, where they are no mistake.
    expect(wrong).toBeLessThanOrEqual(0.05 + slack(0.05));
    expect(share('within')).toBeGreaterThan(0.9);
  });

  it('find a difference of twice the zone: beyond it as often as a one-sided t test at 2.5 % does', () => {
    // Power of the t test at a shift of 1.5 sqrt(10) = 4.743 with 9 degrees of freedom: the share of normal samples
    // with (mean - 1.5) / (s / sqrt(10)) > 2.262157, here counted from sums without the interval code.
    const normal = normals('by hand');
    let beyond = 0;
    for (let study = 0; study < STUDIES; study++) {
      let sum = 0,
        squares = 0;
      for (let i = 0; i < PAIRS; i++) {
        const value = normal();
        sum += value;
        squares += value * value;
      }
      const mean = sum / PAIRS,
        sd = Math.sqrt((squares - PAIRS * mean * mean) / (PAIRS - 1));
      if ((mean + 1.5) / (sd / Math.sqrt(PAIRS)) > 2.262157) beyond++;
    }
    const power = beyond / STUDIES;
    expect(power).toBeGreaterThan(0.95);
    expect(Math.abs(shares(2 * ZONE)('more') - power)).toBeLessThanOrEqual(Math.SQRT2 * slack(power));
  });
});
