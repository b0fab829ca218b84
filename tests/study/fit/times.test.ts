import { describe, expect, it } from 'vitest';
import { type Distribution, meanOf, varianceOf } from '../../../src/random/distribution.js';
import { lognormalOf } from '../../../src/random/shapes.js';
import { choose } from '../../../src/study/fit/choice.js';
import type { FitOfTimes, Fitted } from '../../../src/study/fit/fitted.js';
import { Draws } from '../../../src/study/fit/goodness/draws.js';
import { knownOf } from '../../../src/study/fit/intervals.js';
import { sampleOf } from '../../../src/study/fit/kinds/sample.js';
import { fitTimes } from '../../../src/study/fit/times.js';

const drawn = (distribution: Distribution, n: number): number[] => [
  ...new Draws(distribution, n, 'times of these tests').next(),
];
const lognormals = drawn(lognormalOf(42, 0.6), 60),
  QUICK = { simulated: 40 },
  nameOf = ({ chosen }: FitOfTimes): string => (typeof chosen === 'string' ? chosen : chosen.name);

describe('what is chosen', () => {
  const candidate = (kind: string, aic: number, p: number): FitOfTimes['candidates'][number] => ({
    distribution: { kind, low: 1, likely: 2, high: 3 } as unknown as Distribution,
    name: kind,
    parameters: 2,
    logLikelihood: 0,
    aic,
    density: () => 0,
    cdf: () => 0,
    quantile: () => 0,
    andersonDarling: { statistic: 1, p, simulated: 400 },
    kolmogorovSmirnov: { statistic: 1, p: 0, simulated: 400 },
  });
  const of = (...candidates: FitOfTimes['candidates'][number][]) => choose(sampleOf(lognormals), candidates);

  it('the lowest AIC of those that are not rejected', () => {
    const choice = of(
      candidate('gamma', 100, 0.049),
      candidate('weibull', 101, 0.05),
      candidate('lognormal', 102, 0.9),
    );
    expect(choice).toEqual({
      chosen: expect.objectContaining({ name: 'weibull' }) as unknown,
      why: 'Of those that fit, weibull has the lowest AIC: the test rejects gamma.',
    });
  });

  it('one with a longest time only where its AIC is lower by 10', () => {
    expect(of(candidate('pert', 90.5, 0.5), candidate('gamma', 100, 0.5))).toMatchObject({
      chosen: { name: 'gamma' },
      why: 'Of those that fit, gamma has the lowest AIC: pert would rule out any longer time.',
    });
    expect(of(candidate('pert', 89.5, 0.5), candidate('gamma', 100, 0.5))).toMatchObject({
      chosen: { name: 'pert' },
    });
    expect(of(candidate('pert', 99, 0.5), candidate('gamma', 98, 0.01))).toMatchObject({
      chosen: { name: 'pert' },
    });
  });

  it('the values themselves where all are rejected', () => {
    expect(of(candidate('gamma', 100, 0.01), candidate('pert', 90, 0.01))).toEqual({
      chosen: 'observed values',
      why: 'No distribution fits: the test rejects all 2.',
    });
  });

  it.each([
    [1, [42], 'constant'],
    [3, [42, 42, 42], 'constant'],
    [2, lognormals.slice(0, 2), 'three points'],
    [9, lognormals.slice(0, 9), 'three points'],
    [10, lognormals.slice(0, 10), 'observed values'],
    [19, lognormals.slice(0, 19), 'observed values'],
  ])('of %d times %o: %s', (n, times, wanted) => {
    const fit = fitTimes(times);
    expect([fit.n, nameOf(fit)]).toEqual([n, wanted]);
    expect(fit.why).toMatch(/^[A-Z\d].*\.$/);
    expect(fit.candidates.length > 0).toBe(n >= 10);
  });

  it('of 20 times on a family', () => {
    const fit = fitTimes(drawn(lognormalOf(42, 0.3), 20), { simulated: 40 });
    expect(fit.chosen).toMatchObject({ name: expect.any(String) as unknown });
    expect(fit.distribution).toBe((fit.chosen as Fitted).distribution);
  });

  it('two kinds of work fit no family: the values themselves, and a warning with the mixture', () => {
    const parts = [lognormalOf(30, 0.15), lognormalOf(90, 0.15)],
      fit = fitTimes(drawn({ kind: 'mixture', parts, weights: [0.6, 0.4] }, 40), { simulated: 40 });
    expect(nameOf(fit)).toBe('observed values');
    expect(fit.distribution).toMatchObject({ kind: 'empirical' });
    expect(fit.warnings).toMatchObject([{ kind: 'two populations', mixture: { kind: 'mixture' } }]);
  });
});

describe('three points', () => {
  it.each([[[30, 42, 55, 41, 38]], [[20, 21, 22, 23, 60]], [[10, 12]]])(
    'of %o have their mean, and their spread',
    (times) => {
      const { distribution } = fitTimes(times),
        n = times.length,
        mean = times.reduce((a, b) => a + b, 0) / n,
        variance = times.reduce((sum, time) => sum + (time - mean) ** 2, 0) / (n - 1);
      expect(meanOf(distribution)).toBeCloseTo(mean, 10);
      const { low, high } = distribution as { low: number; high: number };
      // An end at 0 is all the spread that there can be.
      if (low > 0) expect(varianceOf(distribution)).toBeCloseTo(variance, 8);
      else expect(varianceOf(distribution)).toBeLessThan(variance);
      expect(low).toBeLessThan(Math.min(...times));
      expect(high).toBeGreaterThan(Math.max(...times));
    },
  );
});

describe('a fit of times', () => {
  const fit = fitTimes(lognormals, QUICK);

  it('ranks by AIC, which is twice the parameters less twice the log-likelihood', () => {
    const aics = fit.candidates.map(({ aic }) => aic);
    expect(aics).toEqual(aics.toSorted((a, b) => a - b));
    for (const { aic, parameters, logLikelihood } of fit.candidates)
      expect(aic).toBeCloseTo(2 * parameters - 2 * logLikelihood, 10);
  });

  it('does not hang on the order of the times, and is the same again', () => {
    const data = (each: FitOfTimes) =>
      each.candidates.map(({ name, aic, andersonDarling }) => ({
        name,
        aic: aic.toPrecision(12),
        andersonDarling,
      }));
    expect(data(fitTimes(lognormals, QUICK))).toEqual(data(fit));
    expect(data(fitTimes(lognormals.toReversed(), QUICK))).toEqual(data(fit));
  });

  it('takes the order from the dates', () => {
    const at = lognormals.map((_, i) => (i * 37) % 60),
      rising = at.map((day, i) => lognormals[i] / 3 + day);
    expect(fitTimes(rising, { ...QUICK, at }).warnings.map(({ kind }) => kind)).toContain('drift');
    expect(fitTimes(rising, QUICK).warnings.map(({ kind }) => kind)).not.toContain('drift');
  });

  it('knows the mean and the cv within an interval that narrows with the root of n', () => {
    const width = (n: number): number => {
      const { mean } = knownOf(lognormalOf(42, 0.3), n)!;
      expect(mean.value).toBeCloseTo(42, 10);
      return Math.log(mean.high / mean.low);
    };
    // 2 x 1.96 cv / root n, by the normal limit; the ends of 399 samples are known to some 10 %.
    expect(width(100) / ((2 * 1.96 * 0.3) / 10)).toBeGreaterThan(0.8);
    expect(width(100) / ((2 * 1.96 * 0.3) / 10)).toBeLessThan(1.2);
    expect(width(25) / width(100)).toBeGreaterThan(1.6);
    expect(width(25) / width(100)).toBeLessThan(2.4);
    expect(knownOf({ kind: 'constant', value: 3 }, 10)).toBeUndefined();
  });

  it('refuses what is no sample', () => {
    expect(() => fitTimes([])).toThrow('times: expected one or more, got none');
    expect(() => fitTimes([3, -1])).toThrow('times[1]: expected finite minutes of at least 0, got -1');
    expect(() => fitTimes([3, 4], { at: [1] })).toThrow('at: expected one for each of the 2 times, got 1');
    expect(() => fitTimes([3, 4], { by: { cab: [] } })).toThrow(
      'by cab: expected one for each of the 2 times, got 0',
    );
  });
});
