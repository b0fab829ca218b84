import { expect } from 'vitest';
import type { Distribution } from '../../src/random/distribution.js';
import { Sampler } from '../../src/random/sampler.js';

/**
 * Standard errors allowed: a right sampler fails one check in 16,000 by chance, and the seeds are fixed, so a
 * check that passes once passes always.
 */
const ERRORS_ALLOWED = 4;

/** The first `count` values of a draw named `name`. */
export function sampleOf(
  distribution: Distribution,
  count: number,
  name = 'station/work',
  seed = 'tests',
): Float64Array {
  const sampler = new Sampler([{ name, distribution }], seed, 1);
  return Float64Array.from({ length: count }, () => sampler.next(0));
}

export function averageOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The share of trials that came true must lie within the binomial error of `chance`. */
export function expectShare(seen: number, chance: number, count: number): void {
  const error = Math.sqrt((chance * (1 - chance)) / count);
  expect(Math.abs(seen - chance) / error).toBeLessThan(ERRORS_ALLOWED);
}

/**
 * Sample mean and variance against the given ones; the error of the variance comes from the fourth moment.
 */
export function expectMoments(values: Float64Array, mean: number, variance: number): void {
  const count = values.length;
  const average = averageOf(values);
  let squares = 0;
  let fourths = 0;
  for (const value of values) {
    const square = (value - average) ** 2;
    squares += square;
    fourths += square * square;
  }
  const sampleVariance = squares / (count - 1);
  const varianceError = Math.sqrt((fourths / count - sampleVariance ** 2) / count);
  expect(Math.abs(average - mean) / Math.sqrt(variance / count)).toBeLessThan(ERRORS_ALLOWED);
  expect(Math.abs(sampleVariance - variance) / varianceError).toBeLessThan(ERRORS_ALLOWED);
}

/** The share of values below the p-quantile must be p, for a low, the middle, and two high p. */
export function expectQuantiles(values: Float64Array, quantile: (p: number) => number): void {
  for (const p of [0.01, 0.1, 0.5, 0.9, 0.99]) {
    const q = quantile(p);
    expectShare(
      values.reduce((below, value) => below + (value < q ? 1 : 0), 0) / values.length,
      p,
      values.length,
    );
  }
}
