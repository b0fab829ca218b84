import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../../src/scenario/values/nearest.js';
import {
  chanceOf,
  clockOf,
  clockSpanOf,
  isDate,
  minutesOf,
  weekdaysOf,
} from '../../../src/scenario/values/quantity.js';

describe('quantities as planners write them', () => {
  it.each([
    ['90 s', 1.5],
    ['20 min', 20],
    ['1.5 h', 90],
    ['2 days', 2880],
    ['1 day', 1440],
    ['35min', 35],
    ['0 min', 0],
  ])('reads %s as %d minutes', (text, minutes) => {
    expect(minutesOf(text)).toBe(minutes);
  });

  it.each(['35', '-5 min', '1e3 min', '5 minutes', '5 MIN', '1,5 h', 'min', '', '999999 days'])(
    'reads no time from "%s"',
    (text) => {
      expect(minutesOf(text)).toBeUndefined();
    },
  );

  it('reads percentages up to 100', () => {
    expect(['8 %', '0.5%', '100 %', '101 %', '8', '-1 %'].map(chanceOf)).toEqual([
      0.08,
      0.005,
      1,
      undefined,
      undefined,
      undefined,
    ]);
  });

  // Gregorian rule: every fourth year leaps, full centuries only if divisible by 400.
  it('knows which days exist', () => {
    expect(['2028-02-29', '2000-02-29', '2027-12-31'].every(isDate)).toBe(true);
    expect(
      ['2027-02-29', '2100-02-29', '2027-04-31', '2027-13-01', '2027-00-10', '2027-1-1', '9999-01-01'].some(
        isDate,
      ),
    ).toBe(false);
  });

  it('reads clock times and shifts over midnight', () => {
    expect(['06:30', '6:05', '24:00', '24:01', '12:60'].map(clockOf)).toEqual([
      390,
      365,
      1440,
      undefined,
      undefined,
    ]);
    expect(clockSpanOf('22:00-06:00')).toEqual({ startMin: 1320, endMin: 360 });
    expect(clockSpanOf('24:00-06:00')).toBeUndefined();
  });

  it('reads weekdays, spans of them and spans over Sunday', () => {
    expect(weekdaysOf('Mon-Fri')).toEqual([1, 2, 3, 4, 5]);
    expect(weekdaysOf('Mon-Thu, Sat')).toEqual([1, 2, 3, 4, 6]);
    expect(weekdaysOf('Sat-Mon')).toEqual([1, 6, 7]);
    expect(weekdaysOf('every day')).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(['', 'Mo', 'Mon-Tue-Wed', 'Mon-'].map(weekdaysOf)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('near names', () => {
  // kitten / sitting = 3 is the usual textbook pair; ca / abc = 3 tells optimal string alignment from full
  // Damerau (2). From memory.
  it.each([
    ['kitten', 'sitting', 3],
    ['ca', 'abc', 3],
    ['form', 'from', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('%s and %s are so many edits apart', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
    expect(editDistance(b, a)).toBe(edits);
  });

  it('are suggested if at most a third of the letters differ', () => {
    expect(nearest('paintrs', ['fitters', 'painters'])).toBe('painters');
    expect(nearest('Prime-Booth', ['prime booth'])).toBe('prime booth');
    expect(nearest('welders', ['painters', 'fitters'])).toBeUndefined();
    expect(nearest('x'.repeat(1000), ['x'.repeat(999)])).toBeUndefined();
  });
});
