import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type Distribution, meanOf, varianceOf } from '../../../src/random/distribution.js';
import { timeSchema } from '../../../src/scenario/values/time.js';
import { canBeWritten, written } from '../../../src/study/fit/written.js';

const time = timeSchema(() => ({ values: [], fault: undefined }));
/** As the scenario's own reader takes it. */
const read = (text: string): Distribution => time.parse(parse(text));

const ALL: Distribution[] = [
  { kind: 'constant', value: 42.123456789 },
  { kind: 'exponential', mean: 1234.5678 },
  { kind: 'lognormal', mu: 3.7123456, sigma: 0.3123456 },
  { kind: 'lognormal', mu: -6.2, sigma: 0.0123456 },
  { kind: 'gamma', shape: 10.4123456, scale: 4.123456 },
  { kind: 'gamma', shape: 0.7123456, scale: 43210.123456 },
  { kind: 'weibull', shape: 1.523456, scale: 40.123456 },
  { kind: 'normal', mean: 42.123456, sd: 8.123456, low: 0, high: 91.23456 },
  { kind: 'uniform', low: 0.000012345678, high: 60.123456 },
  { kind: 'triangular', low: 35.123456, likely: 42.23456, high: 60.3456 },
  { kind: 'pert', low: 35.123456, likely: 42.23456, high: 60.3456 },
];

describe('a distribution as the scenario has it', () => {
  it.each(ALL.map((each) => [written(each), each] as const))('%s reads back to six digits', (text, each) => {
    const back = read(text);
    expect(back.kind).toBe(each.kind);
    for (const [key, value] of Object.entries(each)) {
      if (typeof value !== 'number') continue;
      const got = (back as unknown as Record<string, number>)[key];
      // The logarithm of a mean near 1 is near 0: its digits are those of the mean.
      expect(Math.abs(got - value)).toBeLessThanOrEqual(
        1e-6 * Math.max(Math.abs(value), key === 'mu' ? 1 : 0),
      );
    }
    expect(meanOf(back) / meanOf(each)).toBeCloseTo(1, 6);
  });

  it('is short where the numbers are', () => {
    expect(written({ kind: 'pert', low: 35, likely: 42, high: 60 })).toBe(
      '{ low: 35 min, likely: 42 min, high: 60 min }',
    );
    expect(written({ kind: 'exponential', mean: 20 })).toBe('{ exponential: { mean: 20 min } }');
  });

  it('observed values come back as times with their chances', () => {
    const text = written({ kind: 'empirical', values: [10, 30, 10, 20, 10, 10, 10] });
    expect(read(text)).toMatchObject({ kind: 'discrete', values: [10, 30, 20] });
    expect(meanOf(read(text))).toBeCloseTo(100 / 7, 8);
  });

  it('a mixture keeps its parts and shares', () => {
    const mixture: Distribution = {
      kind: 'mixture',
      parts: [
        { kind: 'lognormal', mu: 3, sigma: 0.2 },
        { kind: 'lognormal', mu: 4.5, sigma: 0.3 },
      ],
      weights: [2, 1],
    };
    const back = read(written(mixture));
    expect(back.kind).toBe('mixture');
    expect(meanOf(back) / meanOf(mixture)).toBeCloseTo(1, 6);
    expect(varianceOf(back) / varianceOf(mixture)).toBeCloseTo(1, 5);
  });

  it('is refused where a scenario has no form for it', () => {
    expect(() => written({ kind: 'normal', mean: -3, sd: 8, low: 0, high: 50 })).toThrow('minutes above 0');
    expect(canBeWritten({ kind: 'lognormal', mu: 3, sigma: 2.2 })).toBe(false);
    expect(canBeWritten({ kind: 'weibull', shape: 101, scale: 2 })).toBe(false);
    expect(canBeWritten({ kind: 'uniform', low: 0, high: 2 })).toBe(true);
  });
});
