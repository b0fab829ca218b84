import { describe, expect, it } from 'vitest';
import {
  about,
  dateBehind,
  dateText,
  ends,
  type FirstScreen,
  gainBetween,
  inPrint,
  linesOf,
  NO_LINE,
  roughly,
} from '../../../src/report/first/first.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';

const estimate = (mean: number, low: number | null, high: number | null): Estimate => ({
  ...{ mean, low, high },
  level: 0.95,
  n: 20,
});

const EMPTY: FirstScreen = {
  ...{ about: '', question: '', answer: '', besides: '' },
  ...{ sure: NO_LINE, stops: NO_LINE, toDo: NO_LINE, when: NO_LINE, rests: NO_LINE },
  next: { what: '', command: '' },
  picture: { title: '', more: '' },
};

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
  it('have the quotes of print around names, in every line', () => {
    expect(inPrint('One hour in "days" or "late, 2" (05:30), for “booth”')).toBe(
      'One hour in “days” or “late, 2” (05:30), for “booth”',
    );
    // One alone is no quote.
    expect(inPrint('a 6" pipe')).toBe('a 6" pipe');
    const line = { brief: 'The calendar "days".', more: 'More of "days".' },
      [told] = linesOf({ ...EMPTY, stops: line });
    expect(told).toMatchObject({
      brief: 'The calendar “days”.',
      more: 'More of “days”.',
      name: 'What stops it',
    });
  });
  it('are an interval in words, or that there is none', () => {
    expect(ends(estimate(3.44, 3.42, 3.46))).toBe('3.42 to 3.46');
    expect(ends(estimate(3.45, 3.41, 3.49), 1, estimate(3.44, 3.42, 3.46))).toBe('3.41 to 3.49');
    expect(ends(estimate(2, 2, 2))).toBe('2 in every build');
    expect(ends({ ...estimate(2, null, null), n: 1 })).toBe('how far chance moves that is not known');
  });
  it('are dates as one writes them', () => {
    expect(dateText('2028-04-07')).toBe('7 April 2028');
    expect(dateBehind('2028-04-07', '2028-05-01')).toBe('7 April');
    expect(dateBehind('2028-04-07', '2027-12-31')).toBe('7 April 2028');
  });
  it('are the first sentence of a note with the name, if it is not too long', () => {
    const of = (note: string | null): string => about({ name: 'Line', note });
    expect(of('Invented data. Times from memory.')).toBe('Line. “Invented data.”');
    expect([of(null), of(' '), of(`${'x'.repeat(90)}.`)]).toEqual(['Line', 'Line', 'Line']);
  });
  it('are the interval of a gain alone, whichever side it is on', () => {
    expect(gainBetween(estimate(0.3, 0.24, 0.36), ' a day')).toBe('between 0.24 and 0.36 a day more');
    expect(gainBetween(estimate(-0.3, -0.36, -0.24), ' a day')).toBe('between 0.24 and 0.36 a day less');
    expect(gainBetween(estimate(-0.04, -0.11, 0.02), ' a day')).toBe('between 0.11 a day less and 0.02 more');
    expect(gainBetween(estimate(-0.5, null, null))).toBe('0.5 less in every build');
  });
});
