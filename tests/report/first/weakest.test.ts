import { describe, expect, it } from 'vitest';
import { lastUnitLine, lastUnitText } from '../../../src/report/first/lines/last-unit.js';
import { weakestLine } from '../../../src/report/first/lines/weakest.js';
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
    expect(weakestLine(found)).toEqual({
      brief: '6 painters; with 5, 0.20 a day less.',
      more: 'Between 0.15 and 0.25 a day less; with 7, between 0.1 less and 0.3 more.',
    });
    const all = weakestLine({ ...found, stated: 2 }, 'at 3 a day');
    expect(all.brief).toMatch(/ less \(all 2 tried\)\.$/);
    expect(all.more).toMatch(/ more\. Tried at 3 a day\.$/);
  });
  it('is none where none surely moves more than matters, though one mean is the largest', () => {
    const none = { ...found, isFound: false };
    expect(weakestLine(none)).toEqual({
      brief: 'None surely matters.',
      more:
        'Of 9 guesses and estimates the likeliest to matter were tried: none surely moves what it ships by more than ' +
        '0.034 a day.',
    });
    expect(weakestLine({ ...none, stated: 2 }).more).toMatch(/^All guesses and estimates were tried: none /);
    expect(weakestLine(null)).toEqual({ brief: '', more: '' });
  });
  it('says values as one says them, that an estimate is one, and one end where there is one', () => {
    expect(weakestLine({ ...found, tried: found.tried.slice(1) })).toEqual({
      brief: 'An estimate, the repair of booth, 30 min to 2 h: with 36 min to 2.4 h, 0.03 a day less.',
      more: 'Between 0.01 and 0.05 a day less.',
    });
  });
});

describe('the last unit in words', () => {
  const date = (p: number, day: string | null) => ({ p, date: day, low: null, high: null, why: null });
  const told = (half: string | null, most: string | null, plannedEnd: string | null = null) =>
    lastUnitLine([date(0.5, half), date(0.8, most)], { plannedEnd });
  it('has the surer date, and behind it that at even odds', () => {
    expect(told('2028-04-27', '2028-05-01')).toEqual({
      brief: 'Last unit by 1 May 2028, four times in five.',
      more: 'By 27 April 2028, at even odds.',
    });
    expect(told('2028-05-01', '2028-05-01').more).toBe('That day is also the one at even odds.');
    expect(lastUnitText([date(0.5, '2028-04-27'), date(0.8, '2028-05-01')])).toBe(
      '1 May 2028, four times in five',
    );
  });
  it('leaves out what too few builds tell, and tells nothing where half did not end', () => {
    expect(told('2028-05-01', null)).toEqual({ brief: 'Last unit by 1 May 2028, at even odds.', more: '' });
    expect(told(null, null, '2028-04-15')).toEqual({ brief: '', more: '' });
    expect(lastUnitText([])).toBeNull();
  });
  it('says of which build, what is planned with its year where that is another, and what today does', () => {
    const dates = [date(0.5, '2028-01-03'), date(0.8, '2028-01-05')];
    expect(
      lastUnitLine(dates, { of: 'with them', plannedEnd: '2027-12-20', today: [date(0.5, '2028-02-01')] }),
    ).toEqual({
      brief: 'Last unit by 5 January 2028 with them, four times in five; planned 20 December 2027.',
      more: 'By 3 January 2028 with them, at even odds. Today: by 1 February 2028, at even odds. So the plan is more likely missed.',
    });
    expect(lastUnitLine(dates, { plannedEnd: null, today: dates }).more).toMatch(/ Today it is the same\.$/);
  });
  it('says that the plan is kept by the dates themselves: on its last day, and not a day later', () => {
    const kept = (half: string, most: string | null): string => told(half, most, '2028-04-15').more;
    expect(kept('2028-04-12', '2028-04-15')).toMatch(/ So the plan is kept, four times in five\.$/);
    expect(kept('2028-04-15', '2028-04-16')).toMatch(/ So the plan is kept at even odds\.$/);
    expect(kept('2028-04-15', null)).toMatch(/^So the plan is kept at even odds\.$/);
    expect(kept('2028-04-16', '2028-05-01')).toMatch(/ So the plan is more likely missed\.$/);
  });
});
