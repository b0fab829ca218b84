import { describe, expect, it } from 'vitest';
import { between, dateText, roughly } from '../../../src/report/first/first.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';

const estimate = (mean: number, low: number | null, high: number | null): Estimate => ({
  ...{ mean, low, high },
  level: 0.95,
  n: 20,
});

describe('the figure of an answer', () => {
  it.each([
    // 3.4 is outside of 3.42 to 3.46, so a digit more; 3.5 is within 3.4 to 3.6.
    [estimate(3.44, 3.42, 3.46), 4, '3.44'],
    [estimate(3.48, 3.4, 3.6), 4, '3.5'],
    // Never the number that it is told apart from.
    [estimate(3.98, 3.95, 4.01), 4, '3.98'],
    [estimate(17.3, 16.8, 17.9), null, '17'],
    // The same in every build.
    [estimate(3.25, null, null), 4, '3.25'],
  ])('%o has the fewest digits that are within its interval', (of, asked, text) => {
    expect(roughly(of, asked)).toBe(text);
  });
});

describe('words of the first screen', () => {
  it('are an interval in words, or that there is none', () => {
    expect(between(estimate(3.44, 3.42, 3.46))).toBe('between 3.42 and 3.46');
    expect(between(estimate(2, 2, 2))).toBe('2 in every build');
    expect(between({ ...estimate(2, null, null), n: 1 })).toBe('how far chance moves that is not known');
  });
  it('are dates as one writes them', () => {
    expect(dateText('2028-04-07')).toBe('7 April 2028');
  });
});
