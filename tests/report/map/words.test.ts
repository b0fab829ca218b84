import { describe, expect, it } from 'vitest';
import { balanced, cuts } from '../../../src/report/map/parts/breaks.js';
import { duration, hoursText, inHundred, releaseText, stepText } from '../../../src/report/map/words.js';
import { dayShift, programme, step } from '../../scenario/compile-scenario.js';

describe('the words of the map', () => {
  it.each([
    [0, 'none'],
    [0.0001, 'hardly any'],
    [0.0033, '1 in 300'],
    [0.01, '1 in 100'],
    [0.083, '8 in 100'],
    [0.995, 'all but 1 in 200'],
    [0.9967, 'all but 1 in 300'],
    [0.9999, 'nearly all'],
    [1, 'all'],
  ])('a share of %d is %s', (share, words) => {
    expect(inHundred(share)).toBe(words);
  });

  it.each([
    [40, '40 min'],
    [195, '3.25 h'],
    [3 * 1440, '3 days'],
  ])('%d minutes are %s', (minutes, words) => {
    expect(duration(minutes)).toBe(words);
  });

  it('tell shifts with their days, and that there are none', () => {
    expect(hoursText(dayShift)).toBe('Mon-Fri 06:00-14:30');
    expect(hoursText({ ...dayShift, on: [1, 3, 7] })).toBe('Mon, Wed, Sun 06:00-14:30');
    expect(hoursText(undefined)).toBe('day and night');
  });

  it('tell for whom a step is done', () => {
    const all = step('road test', 'a', {
      when: { pump: ['large', 'twin'] },
      sample: { oneIn: 5, by: 'turn' },
    });
    expect(stepText(all)).toBe('road test, only if pump is large or twin, 1 unit in 5');
    expect(stepText(step('mask', 'a', { when: { bands: ['yes'] } }))).toBe('mask, only with bands');
    expect(stepText(step('mask', 'a', { when: { bands: ['no'] } }))).toBe('mask, only without bands');
    expect(stepText(step('mask', 'a', { when: { cab: ['long'], bands: ['no'] } }))).toBe(
      'mask, only if cab is long and bands is no',
    );
    expect(stepText(step('mend', 'a', { rework: 'only' }))).toBe('mend, only if sent back');
  });

  it('tell what is released', () => {
    expect(releaseText(programme())).toBe('10 units: 2 a day from 2027-03-01');
    const at = { minutes: [420, 690], on: [1, 2, 3, 4, 5] };
    expect(
      releaseText(
        programme({ release: { kind: 'rate', phases: [{ from: '2027-03-01', perWeek: 20 }], at } }),
      ),
    ).toBe('10 units: 2 at 07:00, 11:30, Mon-Fri, from 2027-03-01');
    expect(releaseText(programme({ release: { kind: 'saturated' }, quantity: undefined }))).toBe(
      'Units whenever the first station has room',
    );
  });
});

describe('the cuts of a strip', () => {
  it('are as few as there is room for, and where they cost least', () => {
    expect(cuts([4, 4, 4, 4], [0, 0, 0, 0], 16)).toEqual([0]);
    expect(cuts([4, 4, 4, 4], [0, 5, 5, 0], 12)).toEqual([0, 3]);
    expect(cuts([4, 4, 4, 4], [0, 0, 5, 5], 12)).toEqual([0, 1]);
  });

  it('leave an item alone that is longer than the room', () => {
    expect(cuts([30, 4], [0, 0], 10)).toEqual([0, 1]);
    expect(cuts([4, 30, 4], [0, 0, 0], 10)).toEqual([0, 1, 2]);
  });

  it('leave together what may not be parted, also where there is no room', () => {
    expect(cuts([8, 8, 8], [0, Infinity, 0], 10)).toEqual([0, 2]);
  });

  it('make columns of even length', () => {
    expect(balanced([5, 5, 5, 5, 5, 5], [0, 0, 0, 0, 0, 0], 3)).toEqual([0, 2, 4]);
    expect(balanced([9, 1, 1, 1], [0, 0, 0, 0], 3)).toHaveLength(2);
  });
});
