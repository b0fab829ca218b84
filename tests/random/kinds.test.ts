import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import weibullQuantile from '@stdlib/stats-base-dists-weibull-quantile';
import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../src/random/distribution.js';
import { meanOf, varianceOf } from '../../src/random/distribution.js';
import { expectMoments, expectQuantiles, expectShare, sampleOf } from './sampled.js';

const COUNT = 100_000;

/** 1 - Φ at whole and half numbers, as in any table of the normal law; the digits are from memory. */
const UPPER = {
  '-1': 0.8413447460685429,
  '0': 0.5,
  '0.5': 0.3085375387259869,
  '1': 0.15865525393145707,
  '2': 0.02275013194817921,
  '2.5': 0.006209665325776132,
  '3': 0.0013498980316300933,
};

/** p-quantile of the standard normal cut to where the upper tail goes from `atLow` down to `atHigh`. */
const cutQuantile = (atLow: number, atHigh: number) => (p: number) =>
  -normalQuantile(atLow + p * (atHigh - atLow), 0, 1);

const triangularQuantile = (low: number, likely: number, high: number) => (p: number) =>
  p < (likely - low) / (high - low)
    ? low + Math.sqrt(p * (high - low) * (likely - low))
    : high - Math.sqrt((1 - p) * (high - low) * (high - likely));

/** Share of a uniform below `x`. */
const within = (x: number, low: number, high: number): number =>
  Math.min(1, Math.max(0, (x - low) / (high - low)));

/** Share of an Erlang of 3 phases of mean 1 below `x`: 1 - exp(-x) (1 + x + x²/2). */
const erlang3 = (x: number): number => 1 - Math.exp(-x) * (1 + x + (x * x) / 2);

/** The p-quantile of a law whose shares below a value are given: by bisection between 0 and `most`. */
const byBisection = (below: (value: number) => number, most: number) => (p: number) => {
  let [low, high] = [0, most];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (below(middle) < p) low = middle;
    else high = middle;
  }
  return low;
};

/** Mean and variance are the textbook's, written out here; quantiles are @stdlib's or the plain inverse. */
const cases: {
  title: string;
  of: Distribution;
  mean?: number;
  variance?: number;
  quantile: (p: number) => number;
}[] = [
  {
    title: 'uniform 2 to 5',
    of: { kind: 'uniform', low: 2, high: 5 },
    mean: 3.5,
    variance: 0.75,
    quantile: (p) => 2 + 3 * p,
  },
  {
    title: 'triangular 35, 42, 60',
    of: { kind: 'triangular', low: 35, likely: 42, high: 60 },
    mean: 137 / 3,
    variance: (35 ** 2 + 42 ** 2 + 60 ** 2 - 35 * 42 - 35 * 60 - 42 * 60) / 18,
    quantile: triangularQuantile(35, 42, 60),
  },
  {
    title: 'triangular with its peak at the low end',
    of: { kind: 'triangular', low: 1, likely: 1, high: 3 },
    mean: 5 / 3,
    variance: 4 / 18,
    quantile: triangularQuantile(1, 1, 3),
  },
  {
    title: 'PERT 35, 42, 60',
    of: { kind: 'pert', low: 35, likely: 42, high: 60 },
    mean: (35 + 4 * 42 + 60) / 6,
    variance: (25 ** 2 * (2.12 * 3.88)) / (36 * 7),
    quantile: (p) => 35 + 25 * betaQuantile(p, 2.12, 3.88),
  },
  {
    title: 'PERT with its peak at the high end',
    of: { kind: 'pert', low: 0, likely: 1, high: 1 },
    mean: 5 / 6,
    variance: 5 / 252,
    quantile: (p) => betaQuantile(p, 5, 1),
  },
  {
    title: 'exponential of mean 7',
    of: { kind: 'exponential', mean: 7 },
    mean: 7,
    variance: 49,
    quantile: (p) => -7 * Math.log1p(-p),
  },
  {
    title: 'gamma of shape 0.4',
    of: { kind: 'gamma', shape: 0.4, scale: 3 },
    mean: 1.2,
    variance: 3.6,
    quantile: (p) => 3 * gammaQuantile(p, 0.4, 1),
  },
  {
    title: 'Erlang of 3 phases',
    of: { kind: 'gamma', shape: 3, scale: 2 },
    mean: 6,
    variance: 12,
    quantile: (p) => 2 * gammaQuantile(p, 3, 1),
  },
  {
    title: 'gamma of shape 11.1',
    of: { kind: 'gamma', shape: 11.1, scale: 0.5 },
    mean: 5.55,
    variance: 2.775,
    quantile: (p) => 0.5 * gammaQuantile(p, 11.1, 1),
  },
  {
    title: 'lognormal of sigma 0.3',
    of: { kind: 'lognormal', mu: 1, sigma: 0.3 },
    mean: Math.exp(1.045),
    variance: Math.exp(2.09) * (Math.exp(0.09) - 1),
    quantile: (p) => Math.exp(normalQuantile(p, 1, 0.3)),
  },
  {
    title: 'Weibull of shape 2, the Rayleigh',
    of: { kind: 'weibull', shape: 2, scale: 3 },
    mean: (3 * Math.sqrt(Math.PI)) / 2,
    variance: 9 * (1 - Math.PI / 4),
    quantile: (p) => weibullQuantile(p, 2, 3),
  },
  {
    title: 'Weibull of shape 0.5',
    of: { kind: 'weibull', shape: 0.5, scale: 1 },
    mean: 2,
    variance: 20,
    quantile: (p) => weibullQuantile(p, 0.5, 1),
  },
  {
    title: 'normal cut far out, hardly at all',
    of: { kind: 'normal', mean: 10, sd: 2, low: -30, high: Infinity },
    mean: 10,
    variance: 4,
    quantile: (p) => normalQuantile(p, 10, 2),
  },
  {
    title: 'normal cut to -1 and 2 sd',
    of: { kind: 'normal', mean: 0, sd: 1, low: -1, high: 2 },
    quantile: cutQuantile(UPPER['-1'], UPPER['2']),
  },
  {
    title: 'normal cut to 0 and 0.5 sd',
    of: { kind: 'normal', mean: 0, sd: 1, low: 0, high: 0.5 },
    quantile: cutQuantile(UPPER['0'], UPPER['0.5']),
  },
  {
    title: 'normal cut to -1 and 1 sd',
    of: { kind: 'normal', mean: 0, sd: 1, low: -1, high: 1 },
    mean: 0,
    variance: 1 - (2 * Math.exp(-0.5)) / Math.sqrt(2 * Math.PI) / 0.6826894921370859,
    quantile: cutQuantile(UPPER['-1'], UPPER['1']),
  },
  {
    title: 'normal cut to 2 and 2.5 sd',
    of: { kind: 'normal', mean: 0, sd: 1, low: 2, high: 2.5 },
    quantile: cutQuantile(UPPER['2'], UPPER['2.5']),
  },
  {
    title: 'normal cut to beyond 3 sd',
    of: { kind: 'normal', mean: 0, sd: 1, low: 3, high: Infinity },
    quantile: cutQuantile(UPPER['3'], 0),
  },
  {
    // H2, as in L. Kleinrock, Queueing Systems 1, 1975, section 4.7; from memory. Mean 0.8 + 2, second moment
    // 2 (0.8 + 20), 1 - B(x) = 0.8 exp(-x) + 0.2 exp(-x/10).
    title: 'hyperexponential of two phases',
    of: {
      kind: 'mixture',
      parts: [
        { kind: 'exponential', mean: 1 },
        { kind: 'exponential', mean: 10 },
      ],
      weights: [0.8, 0.2],
    },
    mean: 2.8,
    variance: 2 * (0.8 + 20) - 2.8 ** 2,
    quantile: byBisection((x) => 1 - 0.8 * Math.exp(-x) - 0.2 * Math.exp(-x / 10), 1000),
  },
  {
    // Of three values drawn one is drawn by rejection, so the parts take unlike amounts of the stream. Law of
    // total variance by hand: the means 3, 6 and 12 have 5.7 in the mean and lie 2.7, 0.3 and 6.3 from it; the
    // variances are 1/3, 12 and 4/3.
    title: 'mixture of two uniforms and a gamma',
    of: {
      kind: 'mixture',
      parts: [
        { kind: 'uniform', low: 2, high: 4 },
        { kind: 'gamma', shape: 3, scale: 2 },
        { kind: 'uniform', low: 10, high: 14 },
      ],
      weights: [5, 3, 2],
    },
    mean: 5.7,
    variance: 0.5 * (1 / 3 + 2.7 ** 2) + 0.3 * (12 + 0.3 ** 2) + 0.2 * (4 / 3 + 6.3 ** 2),
    quantile: byBisection(
      (x) => 0.5 * within(x, 2, 4) + 0.3 * erlang3(x / 2) + 0.2 * within(x, 10, 14),
      1000,
    ),
  },
  {
    title: 'normal cut to below -3 sd',
    of: { kind: 'normal', mean: 10, sd: 2, low: -Infinity, high: 4 },
    quantile: (p) => 10 - 2 * cutQuantile(UPPER['3'], 0)(1 - p),
  },
];

describe.each(cases)('the values of a $title', ({ of, mean, variance, quantile, title }) => {
  const values = sampleOf(of, COUNT, title);

  it('have the mean and variance of the closed form', () => {
    expectMoments(values, mean ?? meanOf(of), variance ?? varianceOf(of));
  });

  it('fall below each quantile as often as they should', () => {
    expectQuantiles(values, quantile);
  });
});

describe('the values of other kinds', () => {
  it('are the constant', () => {
    expect(new Set(sampleOf({ kind: 'constant', value: 20 }, 200))).toEqual(new Set([20]));
  });

  it('are discrete values by weight, and never one of weight 0', () => {
    const values = sampleOf({ kind: 'discrete', values: [0, 5, 6, 7, 9], weights: [0, 2, 1, 5, 0] }, COUNT);
    const share = (wanted: number) => values.filter((value) => value === wanted).length / COUNT;
    expectShare(share(5), 2 / 8, COUNT);
    expectShare(share(6), 1 / 8, COUNT);
    expectShare(share(7), 5 / 8, COUNT);
    expect([...new Set(values)].sort()).toEqual([5, 6, 7]);
  });

  it('are the observed values, each as often as the next, a repeated one twice as often', () => {
    const values = sampleOf({ kind: 'empirical', values: [31, 40, 40, 58] }, COUNT);
    const share = (wanted: number) => values.filter((value) => value === wanted).length / COUNT;
    expectShare(share(31), 1 / 4, COUNT);
    expectShare(share(40), 1 / 2, COUNT);
    expectShare(share(58), 1 / 4, COUNT);
  });

  it('of a mixture of fixed times are those of the same discrete times', () => {
    const mixture: Distribution = {
      kind: 'mixture',
      parts: [5, 7, 9].map((value) => ({ kind: 'constant', value })),
      weights: [0.2, 0, 0.8],
    };
    expect(sampleOf(mixture, 500)).toEqual(
      sampleOf({ kind: 'discrete', values: [5, 7, 9], weights: [0.2, 0, 0.8] }, 500),
    );
  });

  it('of a mixture keep their choices when a time or its spread is another', () => {
    const mixed = (mean: number, sd: number): Float64Array =>
      sampleOf(
        {
          kind: 'mixture',
          parts: [
            { kind: 'normal', mean, sd, low: 0, high: 3 * mean },
            { kind: 'constant', value: 1000 },
          ],
          weights: [0.7, 0.3],
        },
        200,
      );
    const isLong = (value: number): boolean => value === 1000;
    expect(mixed(10, 1).slice(0, 64).map(Number).filter(isLong).length).toBeGreaterThan(5);
    expect(Array.from(mixed(10, 1), isLong)).toEqual(Array.from(mixed(20, 1), isLong));
  });

  it('are a constant where the spread is none', () => {
    const flat: Distribution[] = [
      { kind: 'uniform', low: 4, high: 4 },
      { kind: 'triangular', low: 4, likely: 4, high: 4 },
      { kind: 'pert', low: 4, likely: 4, high: 4 },
      { kind: 'lognormal', mu: Math.log(4), sigma: 0 },
      { kind: 'normal', mean: 4, sd: 0, low: 0, high: 9 },
      { kind: 'normal', mean: 0, sd: 1, low: 4, high: 4 },
    ];
    for (const distribution of flat) {
      for (const value of sampleOf(distribution, 3)) expect(value).toBeCloseTo(4, 12);
    }
  });
});

describe('a cut normal', () => {
  it.each([
    ['a million sd away', { kind: 'normal', mean: 0, sd: 1, low: 1e6, high: Infinity }],
    ['on the far side, and thin', { kind: 'normal', mean: 0, sd: 1, low: -1e9 - 1, high: -1e9 }],
    [
      'about the mean, and a billionth wide',
      { kind: 'normal', mean: 5, sd: 1, low: 5 - 1e-9, high: 5 + 1e-9 },
    ],
    ['with an sd close to nothing', { kind: 'normal', mean: 5, sd: 1e-300, low: 6, high: 7 }],
  ] as [string, Distribution & { low: number; high: number }][])(
    'ends and stays inside an interval %s',
    (_, d) => {
      for (const value of sampleOf(d, 2000)) {
        expect(value).toBeGreaterThanOrEqual(d.low);
        expect(value).toBeLessThanOrEqual(d.high);
      }
    },
  );
});
