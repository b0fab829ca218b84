import { describe, expect, it } from 'vitest';
import { lastUnitText, planSays } from '../../../src/report/first/last-unit.js';
import { weakestText } from '../../../src/report/first/weakest.js';
import type { WeakestResult } from '../../../src/study/reliefs/values/weakest.js';

const gain = (mean: number, half: number) => ({
  ...{ mean, low: mean - half, high: mean + half },
  ...{ level: 0.99, n: 10 },
});
/** Invented. */
const found: WeakestResult = {
  ...{ stated: 9, replications: 10, zone: 0.034, isFound: true },
  tried: [
    {
      ...{ path: 'a', words: 'the number of painters', basis: 'guess', now: '6' },
      ends: [
        { value: '5', gain: gain(-0.2, 0.05) },
        { value: '7', gain: gain(0.1, 0.15) },
      ],
    },
    {
      ...{ path: 'b', words: 'the repair of booth', basis: 'estimate', now: '{ low: 30 min, high: 2 h }' },
      ends: [{ value: '{ low: 36 min, high: 2.4 h }', gain: gain(-0.03, 0.02) }],
    },
  ],
};

describe('the weakest guess in words', () => {
  it('has both ends, and says of how many tried it is the one that moves most', () => {
    expect(weakestText(found)).toBe(
      'Weakest guess of 2 tried: the number of painters, 6: with 5 it ships 0.20 a day less (0.15 to 0.25); with 7, ' +
        'between 0.1 less and 0.3 more.',
    );
    expect(weakestText({ ...found, stated: 2 }, undefined, ' at 3 a day')).toMatch(
      /^Weakest guess, tried at 3 a day: the number of painters/,
    );
  });
  it('is none where none surely moves more than matters, though one mean is the largest', () => {
    const none = { ...found, isFound: false };
    expect(weakestText(none)).toBe(
      'Of 9 guesses and estimates the 2 likeliest to matter were tried: none surely moves what it ships by more than ' +
        '0.034 a day.',
    );
    expect(weakestText({ ...none, stated: 2 })).toMatch(
      /^Guesses and estimates tried: 2; none surely moves /,
    );
    expect(weakestText(null)).toBe('');
  });
  it('says values as one says them, and one end where there is one', () => {
    expect(weakestText({ ...found, tried: found.tried.slice(1) })).toBe(
      'Weakest estimate of 1 tried: the repair of booth, 30 min to 2 h: with 36 min to 2.4 h it ships 0.03 a day ' +
        'less (0.01 to 0.05).',
    );
  });
});

describe('the last unit in words', () => {
  const date = (p: number, day: string | null) => ({ p, date: day, low: null, high: null, why: null });
  it('has the dates at even odds and at four in five, and one where they are the same', () => {
    expect(lastUnitText([date(0.5, '2028-04-27'), date(0.8, '2028-05-01')])).toBe(
      'by 27 April 2028 at even odds, by 1 May 2028 at four in five',
    );
    expect(lastUnitText([date(0.5, '2028-05-01'), date(0.8, '2028-05-01')])).toBe(
      'by 1 May 2028 at four in five',
    );
  });
  it('leaves out what too few builds tell, and tells nothing where half did not end', () => {
    expect(lastUnitText([date(0.5, '2028-05-01'), date(0.8, null)])).toBe('by 1 May 2028 at even odds');
    expect(lastUnitText([date(0.5, null), date(0.8, null)])).toBeNull();
    expect(lastUnitText([])).toBeNull();
    expect([planSays('2028-04-15', []), planSays(null, [])]).toEqual(['; planned: 15 April 2028', '']);
  });
  it('says that the plan is kept by the dates themselves: on its last day, and not a day later', () => {
    const kept = (half: string, most: string | null): string =>
      planSays('2028-04-15', [date(0.5, half), date(0.8, most)]);
    expect(kept('2028-04-12', '2028-04-15')).toMatch(/, kept at four in five$/);
    expect(kept('2028-04-15', '2028-04-16')).toMatch(/, kept at even odds$/);
    expect(kept('2028-04-15', null)).toMatch(/, kept at even odds$/);
    expect(kept('2028-04-16', '2028-05-01')).toMatch(/, more likely missed$/);
  });
});
