import { describe, expect, it } from 'vitest';
import {
  dipsAfter,
  markedText,
  shortWeeks,
  weekMarks,
} from '../../../../src/report/charts/over-time/week-marks.js';
import type { Results } from '../../../../src/study/simulate/results.js';
import { results } from '../../samples/drawn.js';

/** Weeks from Monday 2027-03-01, five days each. */
const weeks = (workingDays: readonly number[], more: Partial<Results> = {}): Results => {
  const starts = workingDays.map((_, week) =>
    new Date(Date.UTC(2027, 2, 1 + 7 * week)).toISOString().slice(0, 10),
  );
  return {
    ...results,
    answer: { ...results.answer, unusual: null },
    outages: [],
    shutdowns: [],
    recoveries: [],
    series: { ...results.series, unit: 'week', starts, workingDays, labels: starts },
    ...more,
  };
};

describe('marked weeks', () => {
  it('are those without work and those with less than most, told once where they follow each other', () => {
    expect(shortWeeks([5, 4, 5, 0, 0, 5])).toEqual([
      { from: 1, to: 1, words: 'short week' },
      { from: 3, to: 4, words: 'no work' },
    ]);
    expect(shortWeeks([5, 5])).toEqual([]);
  });

  it('have the name of an outage in the weeks that it touches, its end not among them', () => {
    const outage = { name: 'lights', from: '2027-03-10T00:00:00', to: '2027-03-15T00:00:00' },
      outages = [{ ...outage, days: 5, stations: [], lanes: [] }];
    expect(weekMarks(weeks([5, 5, 5], { outages }))).toEqual([{ from: 1, to: 1, words: 'outage: lights' }]);
    expect(markedText(weekMarks(weeks([5, 5, 5], { outages })), ['W1', 'W2', 'W3'])).toBe(
      'W2 outage: lights',
    );
  });

  it('of a shutdown say so, and not that the week is short', () => {
    const shutdowns = [{ calendar: 'days', from: '2027-03-08', to: '2027-03-21', note: null }];
    expect(weekMarks(weeks([5, 0, 0, 4], { shutdowns }))).toEqual([
      { from: 1, to: 2, words: 'shutdown' },
      { from: 3, to: 3, words: 'short week' },
    ]);
  });
});

describe('a dip after an outage', () => {
  const byDay = (shippedWith: number, behindP10 = 4): Results['recoveries'] => {
    const [first] = results.recoveries,
      dates = ['2027-03-07', '2027-03-14', '2027-03-21'];
    if (first.byDay === null) throw new Error('expected a recovery by day in the sample');
    const all = { ...first.byDay, dates, shippedWithout: [20, 20, 20], behindP10: [0, 0, behindP10] };
    return [{ ...first, from: '2027-03-03T00:00:00', byDay: { ...all, shippedWith: [20, 20, shippedWith] } }];
  };
  it('is named where the same build without the outage ships a quarter more', () => {
    expect(dipsAfter(weeks([5, 5, 5], { recoveries: byDay(9) }))).toEqual([
      { from: 2, to: 2, words: 'after the outage', isPlain: true },
    ]);
  });
  it('is not laid to an outage where the build without it ships as little, or some builds are not behind', () => {
    expect(dipsAfter(weeks([5, 5, 5], { recoveries: byDay(19) }))).toEqual([]);
    expect(dipsAfter(weeks([5, 5, 5], { recoveries: byDay(9, 0) }))).toEqual([]);
    expect(dipsAfter(weeks([5, 5, 5]))).toEqual([]);
  });
});
