import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../../src/random/distribution.js';
import { drawnValue } from '../../../src/study/uncertain/draw.js';
import type { Uncertain, UncertainInput } from '../../../src/study/uncertain/inputs.js';

const input = (of: Uncertain, n: number, path = 'route[0].work'): UncertainInput => ({
  ...{ path, at: ['route', 0, 'work'], words: 'the work', n, of },
});
const DRAWS = 2000;
const draws = (of: UncertainInput, count = DRAWS): unknown[] =>
  Array.from({ length: count }, (_, d) => drawnValue(of, '1', d + 1, 0));
const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const sdOf = (values: readonly number[]): number =>
  Math.sqrt(meanOf(values.map((value) => (value - meanOf(values)) ** 2)));
const time = (distribution: Distribution): Uncertain => ({ kind: 'time', distribution });

describe('a chance', () => {
  it('comes from the Beta posterior of its counts with the prior of Jeffreys', () => {
    const values = draws(input({ kind: 'chance', found: 17 }, 412)) as number[];
    // Beta(17.5, 395.5): mean a / (a + b), variance a b / ((a + b)^2 (a + b + 1)); quantiles by scipy 1.10.1.
    const sd = Math.sqrt((17.5 * 395.5) / (413 ** 2 * 414));
    expect(meanOf(values)).toBeGreaterThan(17.5 / 413 - (4 * sd) / Math.sqrt(DRAWS));
    expect(meanOf(values)).toBeLessThan(17.5 / 413 + (4 * sd) / Math.sqrt(DRAWS));
    expect(sdOf(values) / sd).toBeGreaterThan(0.93);
    expect(sdOf(values) / sd).toBeLessThan(1.07);
  });

  it('of which none was found is above 0 all the same', () => {
    const values = draws(input({ kind: 'chance', found: 0 }, 50), 200) as number[];
    expect(values.every((value) => value > 0 && value < 1)).toBe(true);
  });
});

describe('a chance that is no share of a count', () => {
  const estimated = (chance: number, standardError: number): number[] =>
    draws(input({ kind: 'estimated chance', chance, standardError }, 16)) as number[];

  it.each([
    [0.12, 0.08],
    [0.8, 0.066],
    [0.5, 0.2],
  ])('%d +- %d has that mean and that standard deviation', (chance, standardError) => {
    const values = estimated(chance, standardError);
    expect(Math.abs(meanOf(values) - chance)).toBeLessThan((4 * standardError) / Math.sqrt(DRAWS));
    expect(Math.abs(sdOf(values) / standardError - 1)).toBeLessThan(0.08);
  });

  it('of none or all is drawn as after counts that found none or all', () => {
    // Jeffreys' Beta(1/2, 20.5) after none of 20: mean 0.02381, sd 0.03252 by its formulas.
    const values = estimated(0, 0.0325);
    expect(meanOf(values)).toBeGreaterThan(0.0238 - 0.003);
    expect(meanOf(values)).toBeLessThan(0.0238 + 0.003);
    expect(Math.abs(sdOf(values) / 0.0325 - 1)).toBeLessThan(0.12);
    expect(Math.abs(1 - meanOf(estimated(1, 0.0325)) - meanOf(values))).toBeLessThan(0.003);
  });
});

describe('a learning rate', () => {
  it('has a normal slope on log scales', () => {
    const slopes = (
      draws(input({ kind: 'learning rate', rate: 0.85, standardError: 0.03 }, 40)) as number[]
    ).map((rate) => Math.log2(rate));
    expect(Math.abs(meanOf(slopes) - Math.log2(0.85))).toBeLessThan((4 * 0.03) / Math.sqrt(DRAWS));
    expect(Math.abs(sdOf(slopes) / 0.03 - 1)).toBeLessThan(0.07);
  });

  it('never lets times rise with practice', () => {
    const rates = draws(input({ kind: 'learning rate', rate: 0.99, standardError: 0.1 }, 5), 100) as number[];
    expect(Math.max(...rates)).toBe(1);
  });
});

describe('a time', () => {
  it('whose mean was estimated from n exponential times has a gamma mean', () => {
    const n = 10,
      means = (
        draws(input(time({ kind: 'exponential', mean: 40 }), n)) as { exponential: { mean: string } }[]
      ).map(({ exponential: { mean } }) => parseFloat(mean));
    // The mean of n exponentials is Gamma(n, mean / n): sd mean / sqrt(n).
    expect(Math.abs(meanOf(means) - 40)).toBeLessThan((4 * 40) / Math.sqrt(n * DRAWS));
    expect(Math.abs(sdOf(means) / (40 / Math.sqrt(n)) - 1)).toBeLessThan(0.07);
  });

  it.each<[string, Distribution, RegExp]>([
    ['lognormal', { kind: 'lognormal', mu: 3, sigma: 0.3 }, /^\{"mean":"[\d.]+ min","cv":0\.\d+\}$/],
    ['gamma', { kind: 'gamma', shape: 4, scale: 10 }, /^\{"gamma":\{"mean":"[\d.]+ min","cv":0\.\d+\}\}$/],
    [
      'weibull',
      { kind: 'weibull', shape: 2, scale: 30 },
      /^\{"weibull":\{"shape":[\d.]+,"scale":"[\d.]+ min"\}\}$/,
    ],
    [
      'uniform',
      { kind: 'uniform', low: 10, high: 20 },
      /^\{"uniform":\{"low":"1\d[\d.]* min","high":"1\d[\d.]* min"\}\}$/,
    ],
    [
      'pert',
      { kind: 'pert', low: 10, likely: 20, high: 60 },
      /^\{"low":"[\d.]+ min","likely":"[\d.]+ min","high":"[\d.]+ min"\}$/,
    ],
    ['normal', { kind: 'normal', mean: 40, sd: 8, low: 0, high: 90 }, /"low":"0 min","high":"90 min"/],
    [
      'observed times',
      { kind: 'empirical', values: [10, 20, 30] },
      /^\{"discrete":\{("[123]0 min":[\d.]+,?)+\}\}$/,
    ],
    [
      'mixture',
      {
        kind: 'mixture',
        parts: [
          { kind: 'lognormal', mu: 3, sigma: 0.3 },
          { kind: 'constant', value: 90 },
        ],
        weights: [0.7, 0.3],
      },
      /^\{"mixture":\[\{"share":0\.\d+,"time":\{"mean".*\},\{"share":0\.\d+,"time":"90 min"\}\]\}$/,
    ],
  ])('of kind %s stays of that kind', (_, distribution, form) => {
    const all = draws(input(time(distribution), 30), 20).map((value) => JSON.stringify(value));
    expect(all.filter((text) => !form.test(text))).toEqual([]);
    expect(new Set(all).size).toBeGreaterThan(15);
  });
});

describe('streams', () => {
  it('are those of the seed, the draw and the path alone', () => {
    const a = input(time({ kind: 'exponential', mean: 40 }), 10),
      b = input(time({ kind: 'exponential', mean: 40 }), 10, 'route[1].work');
    expect(drawnValue(a, '1', 3, 0)).toEqual(drawnValue(a, '1', 3, 0));
    for (const other of [drawnValue(b, '1', 3, 0), drawnValue(a, '2', 3, 0), drawnValue(a, '1', 4, 0)])
      expect(other).not.toEqual(drawnValue(a, '1', 3, 0));
  });
});
