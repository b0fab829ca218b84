import { describe, expect, it } from 'vitest';
import { isPrecise, relativeHalfWidth, replicationsFor } from '../../../src/study/answer/precision.js';
import { meanInterval } from '../../../src/study/statistics/interval.js';

const estimate = (mean: number, half: number, n: number) => ({
  mean,
  low: mean - half,
  high: mean + half,
  level: 0.95,
  n,
});

describe('precision', () => {
  it('is reached when half-width over mean is at most g / (1 + g)', () => {
    // g = 0.25: 0.25 / 1.25 = 0.2 of the mean.
    expect(isPrecise(estimate(10, 2, 30), 0.25)).toBe(true);
    expect(isPrecise(estimate(10, 2.001, 30), 0.25)).toBe(false);
    expect(isPrecise(estimate(-10, 2, 30), 0.25)).toBe(true);
  });

  it('is never taken from fewer than thirty replications, nor from an interval that is not there', () => {
    expect(isPrecise(estimate(10, 0.001, 29), 0.25)).toBe(false);
    expect(isPrecise(meanInterval([4], 0.95), 0.25)).toBe(false);
    expect(relativeHalfWidth(estimate(0, 1, 20))).toBe(Infinity);
    expect(relativeHalfWidth(estimate(0, 0, 20))).toBe(0);
  });

  it('asks for replications by the square of what is missing', () => {
    // Half-width 4 of 10 where 2 is asked: four times as many.
    expect(replicationsFor(estimate(10, 4, 20), 0.25)).toBe(80);
    expect(replicationsFor(estimate(10, 1, 40), 0.25)).toBe(41);
    expect(replicationsFor(meanInterval([4], 0.95), 0.25)).toBe(30);
    // Where too few say anything, so many as would do.
    expect(replicationsFor({ mean: 0.1, low: null, high: null, level: 0.95, n: 40, needs: 160 }, 0.25)).toBe(
      160,
    );
  });
});
