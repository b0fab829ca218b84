import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../src/random/distribution.js';
import { leastOf, meanOf, varianceOf } from '../../src/random/distribution.js';
import { gammaOf } from '../../src/random/shapes.js';

/** To `digits` significant digits. */
const near = (seen: number, wanted: number, digits = 10) => {
  expect(Math.abs(seen - wanted) / Math.abs(wanted)).toBeLessThan(10 ** -digits);
};

describe('mean and variance', () => {
  it.each([
    ['constant', { kind: 'constant', value: 4 }, 4, 0],
    ['uniform', { kind: 'uniform', low: 2, high: 8 }, 5, 3],
    // Evans, Hastings & Peacock, Statistical Distributions: (a² + b² + c² - ab - ac - bc) / 18.
    ['triangular', { kind: 'triangular', low: 1, likely: 2, high: 6 }, 3, 21 / 18],
    // Beta(2, 4) on [0, 4]: mean 4/3, variance 16 × 8 / (36 × 7).
    ['pert', { kind: 'pert', low: 0, likely: 1, high: 4 }, 4 / 3, 128 / 252],
    ['exponential', { kind: 'exponential', mean: 3 }, 3, 9],
    ['gamma', { kind: 'gamma', shape: 4, scale: 2 }, 8, 16],
    ['lognormal', { kind: 'lognormal', mu: 0, sigma: 1 }, Math.sqrt(Math.E), Math.E * (Math.E - 1)],
    ['weibull of shape 1', { kind: 'weibull', shape: 1, scale: 3 }, 3, 9],
    ['weibull of shape 2', { kind: 'weibull', shape: 2, scale: 1 }, Math.sqrt(Math.PI) / 2, 1 - Math.PI / 4],
    ['discrete', { kind: 'discrete', values: [1, 2, 4], weights: [1, 2, 1] }, 2.25, 1.1875],
    // Law of total variance: within 0.8 × 0 + 0.2 × 60², between 0.8 × 20² + 0.2 × 80².
    [
      'mixture of 20 min and 2 h',
      {
        kind: 'mixture',
        parts: [{ kind: 'constant', value: 20 }, gammaOf(120, 0.5)],
        weights: [0.8, 0.2],
      },
      40,
      0.2 * 3600 + 0.8 * 400 + 0.2 * 6400,
    ],
    ['empirical', { kind: 'empirical', values: [2, 4, 4, 4, 5, 5, 7, 9] }, 5, 4],
  ] as [string, Distribution, number, number][])('of a %s are the closed form', (_, d, mean, variance) => {
    expect(meanOf(d)).toBeCloseTo(mean, 12);
    expect(varianceOf(d)).toBeCloseTo(variance, 12);
  });
});

describe('a cut normal', () => {
  const cut = (low: number, high: number, mean = 0, sd = 1): Distribution => ({
    kind: 'normal',
    mean,
    sd,
    low,
    high,
  });
  const phi = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);

  it('cut at its mean is the half-normal: √(2/π), 1 - 2/π', () => {
    near(meanOf(cut(0, Infinity)), Math.sqrt(2 / Math.PI));
    near(varianceOf(cut(0, Infinity)), 1 - 2 / Math.PI);
    near(meanOf(cut(-Infinity, 5, 5, 3)), 5 - 3 * Math.sqrt(2 / Math.PI));
  });

  it('agrees with the closed form where that is sound (Johnson, Kotz & Balakrishnan 1994, section 10.1)', () => {
    // Φ(2) and Φ(1) from memory, as in any table.
    const kept = 0.9772498680518208 - 0.15865525393145707;
    const shift = (phi(-1) - phi(2)) / kept;
    near(meanOf(cut(7, 13, 9, 2)), 9 + 2 * shift);
    near(varianceOf(cut(7, 13, 9, 2)), 4 * (1 + (-phi(-1) - 2 * phi(2)) / kept - shift * shift));
  });

  it('left whole has the moments of the normal', () => {
    near(meanOf(cut(-Infinity, Infinity, 3, 2)), 3);
    near(varianceOf(cut(-Infinity, Infinity, 3, 2)), 4);
  });

  it('cut very narrow is a uniform', () => {
    near(varianceOf(cut(1, 1 + 2 ** -20)), 2 ** -40 / 12, 6);
    near(meanOf(cut(1, 1 + 2 ** -20)) - 1, 2 ** -21, 6);
  });

  it('cut far out is an exponential of rate a, by the series 1/a - 2/a³, 1/a² - 6/a⁴', () => {
    // Mills's ratio series (Abramowitz & Stegun 1964, 26.2.12); the next terms are 5e-11 of these at a =
    // 1000.
    near(meanOf(cut(0, Infinity, -1000)) * 1000, 1 - 2e-6, 9);
    near(varianceOf(cut(1000, Infinity)) * 1e6, 1 - 6e-6, 9);
    near(varianceOf(cut(-Infinity, -1000)) * 1e6, 1 - 6e-6, 9);
  });
});

describe('the least value', () => {
  it.each([
    [{ kind: 'constant', value: 4 }, 4],
    [{ kind: 'uniform', low: 2, high: 8 }, 2],
    [{ kind: 'triangular', low: 1, likely: 2, high: 6 }, 1],
    [{ kind: 'pert', low: 3, likely: 3, high: 4 }, 3],
    [{ kind: 'exponential', mean: 3 }, 0],
    [{ kind: 'gamma', shape: 4, scale: 2 }, 0],
    [{ kind: 'lognormal', mu: 0, sigma: 1 }, 0],
    [{ kind: 'lognormal', mu: 0, sigma: 0 }, 1],
    [{ kind: 'weibull', shape: 2, scale: 1 }, 0],
    [{ kind: 'normal', mean: 5, sd: 1, low: 2, high: Infinity }, 2],
    [{ kind: 'normal', mean: 5, sd: 0, low: 2, high: 9 }, 5],
    [{ kind: 'discrete', values: [1, 2, 4], weights: [0, 2, 1] }, 2],
    [{ kind: 'empirical', values: [7, 3, 5] }, 3],
    [
      {
        kind: 'mixture',
        parts: [7, 3, 5].map((value) => ({ kind: 'constant', value })),
        weights: [1, 0, 1],
      },
      5,
    ],
  ] as [Distribution, number][])('of %j is %d', (d, least) => {
    expect(leastOf(d)).toBe(least);
  });
});

describe('a distribution without a meaning', () => {
  it.each([
    [{ kind: 'constant', value: NaN }, 'constant value: expected a finite number, got NaN'],
    [{ kind: 'uniform', low: 3, high: 2 }, 'uniform high: expected at least low (3), got 2'],
    [
      { kind: 'triangular', low: 3, likely: 2, high: 5 },
      'triangular likely: expected at least low (3), got 2',
    ],
    [{ kind: 'exponential', mean: 0 }, 'exponential mean: expected a finite number above 0, got 0'],
    [{ kind: 'gamma', shape: 0, scale: 1 }, 'gamma shape: expected a finite number above 0, got 0'],
    [{ kind: 'weibull', shape: 1, scale: -1 }, 'weibull scale: expected a finite number above 0, got -1'],
    [
      { kind: 'lognormal', mu: 0, sigma: -1 },
      'lognormal sigma: expected a finite number of 0 or more, got -1',
    ],
    [{ kind: 'normal', mean: 0, sd: 1, low: 2, high: 1 }, 'normal high: expected at least low (2), got 1'],
    [
      { kind: 'normal', mean: 0, sd: 1, low: Infinity, high: Infinity },
      'normal low: expected a number or -Infinity, got Infinity',
    ],
    [
      { kind: 'discrete', values: [1, 2], weights: [1] },
      'discrete weights: expected as many as the values (2), got 1',
    ],
    [
      { kind: 'discrete', values: [1, 2], weights: [0, 0] },
      'sum of the discrete weights: expected a finite number above 0, got 0',
    ],
    [
      { kind: 'discrete', values: [1, 2], weights: [2, -1] },
      'discrete weights[1]: expected a finite number of 0 or more, got -1',
    ],
    [{ kind: 'mixture', parts: [], weights: [] }, 'mixture parts: expected one or more, got none'],
    [
      { kind: 'mixture', parts: [{ kind: 'exponential', mean: 0 }], weights: [1] },
      'exponential mean: expected a finite number above 0, got 0',
    ],
    [
      { kind: 'mixture', parts: [{ kind: 'exponential', mean: 1 }], weights: [] },
      'mixture weights: expected as many as the parts (1), got 0',
    ],
    [{ kind: 'empirical', values: [] }, 'empirical values: expected one number or more, got none'],
    [
      { kind: 'empirical', values: [1, Infinity] },
      'empirical values[1]: expected a finite number, got Infinity',
    ],
  ] as [Distribution, string][])('%j is refused by name', (d, message) => {
    expect(() => meanOf(d)).toThrow(new RangeError(message));
    expect(() => leastOf(d)).toThrow(new RangeError(message));
  });
});
