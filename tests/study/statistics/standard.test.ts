import { describe, expect, it } from 'vitest';
import { sideOf, sideOfShare } from '../../../src/study/statistics/standard.js';
import { normals } from './normals.js';

const TRIALS = 1000;
/** Three standard errors of a share of 5 % in so many trials. */
const SLACK = 3 * Math.sqrt((0.05 * 0.95) / TRIALS);
const asked = { first: 10, zone: 0.5, error: 0.05 };

/** Replications that a comparison took, and what it said, of a mean and a spread. */
function play(seed: string, mean: number, spread: number): { side: string | null; took: number } {
  const normal = normals(seed),
    values: number[] = [];
  for (;;) {
    values.push(mean + spread * normal());
    const side = sideOf(values, 100, asked);
    if (side !== null || values.length === 2000) return { side, took: values.length };
  }
}

describe('a mean against a standard', () => {
  it.each([
    { at: 'above', mean: 100.5 },
    { at: 'below', mean: 99.5 },
  ])('is told wrongly in at most 5 % of 1,000 trials where it is $at by just the zone', ({ at, mean }) => {
    const plays = Array.from({ length: TRIALS }, (_, i) => play(`standard ${at} ${i}`, mean, 1.5)),
      wrong = plays.filter(({ side }) => side !== at).length;
    expect(wrong / TRIALS).toBeLessThanOrEqual(0.05 + SLACK);
    // The bound is not far too wide: some are wrong.
    expect(wrong).toBeGreaterThan(0);
  });

  it('takes fewer replications the further off it is, and the less it spreads', () => {
    const took = (mean: number, spread: number): number =>
      Array.from({ length: 100 }, (_, i) => play(`took ${i}`, mean, spread).took).reduce((a, b) => a + b, 0) /
      100;
    expect(took(102, 3)).toBeLessThan(0.5 * took(100.5, 3));
    expect(took(100.5, 1)).toBeLessThan(0.5 * took(100.5, 3));
  });

  it('does not change its mind: what comes after the value that decides is not looked at', () => {
    const values = [...Array.from({ length: 12 }, (_, i) => 103 + (i % 2)), ...new Array<number>(50).fill(0)];
    expect(sideOf(values, 100, asked)).toBe('above');
  });

  it('is open below the first values, and told at once where nothing varies', () => {
    expect(sideOf(new Array<number>(9).fill(101), 100, asked)).toBe(null);
    expect(sideOf(new Array<number>(10).fill(101), 100, asked)).toBe('above');
    expect(sideOf(new Array<number>(10).fill(99.9), 100, asked)).toBe('below');
    expect(sideOf(new Array<number>(10).fill(100), 100, asked)).toBe('above');
  });

  it('has the bound of its source, by hand: R = max(0, h^2 S^2 / (2 zone) - zone r / 2)', () => {
    // n0 = 3, beta = 1/8: eta = ((1/4)^-1 - 1) / 2 = 1.5, h^2 = 2 1.5 2 = 6; values 1, 2, 3: S^2 = 1.
    const of = (over: number[], more: number[] = []) =>
      sideOf([...over, ...more], 0, { first: 3, zone: 1, error: 1 / 8 });
    // R(3) = 6 / 2 - 1.5 = 1.5; the sum of 1, 2, 3 less 1.49 each is 1.53, less 1.51 each is 1.47.
    expect(of([1 - 1.49, 2 - 1.49, 3 - 1.49])).toBe('above');
    expect(of([1 - 1.51, 2 - 1.51, 3 - 1.51])).toBe(null);
    expect(of([1 - 2.51, 2 - 2.51, 3 - 2.51])).toBe('below');
    // R(4) = 3 - 2 = 1; R(6) = 0.
    expect(of([1 - 2, 2 - 2, 3 - 2], [1])).toBe('above');
    expect(of([1 - 2, 2 - 2, 3 - 2], [0.1, -0.3, 0.1])).toBe('below');
  });

  it('refuses what it cannot take', () => {
    expect(() => sideOf([1], 0, { ...asked, first: 1 })).toThrow(
      'standard: expected at least 2 first values, got 1',
    );
    expect(() => sideOf([1], 0, { ...asked, zone: 0 })).toThrow(
      'expected an indifference zone above 0, got 0',
    );
  });
});

describe('a share against a standard', () => {
  it.each([
    { at: 'above', share: 0.85 },
    { at: 'below', share: 0.75 },
  ])('is told wrongly in at most 5 % of 1,000 trials at the edge of its zone, $at', ({ at, share }) => {
    let wrong = 0;
    for (let i = 0; i < TRIALS; i++) {
      const normal = normals(`share ${at} ${i}`),
        values: boolean[] = [];
      let side: string | null = null;
      // A normal number lies below its quantile: 1.0364 at 85 %, 0.6745 at 75 % (tables of the normal curve).
      while (side === null) {
        values.push(normal() < (share === 0.85 ? 1.0364 : 0.6745));
        side = sideOfShare(values, 0.8, { zone: 0.05, error: 0.05 });
      }
      wrong += Number(side !== at);
    }
    expect(wrong / TRIALS).toBeLessThanOrEqual(0.05 + SLACK);
    expect(wrong).toBeGreaterThan(0);
  });

  it('has the bounds of Wald: log((1 - error) / error), by hand', () => {
    // log(0.85 / 0.75) = 0.1252 a success, log(19) = 2.944: the 24th in a row tells.
    const asked = { zone: 0.05, error: 0.05 };
    expect(sideOfShare(new Array<boolean>(23).fill(true), 0.8, asked)).toBe(null);
    expect(sideOfShare(new Array<boolean>(24).fill(true), 0.8, asked)).toBe('above');
    // log(0.15 / 0.25) = -0.5108 a failure: the sixth in a row.
    expect(sideOfShare(new Array<boolean>(5).fill(false), 0.8, asked)).toBe(null);
    expect(sideOfShare(new Array<boolean>(6).fill(false), 0.8, asked)).toBe('below');
    expect(() => sideOfShare([], 0.98, asked)).toThrow('expected shares between 0 and 1');
  });
});
