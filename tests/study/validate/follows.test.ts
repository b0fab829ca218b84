import { describe, expect, it } from 'vitest';
import { causesOf } from '../../../src/study/validate/cause.js';
import type { Judged } from '../../../src/study/validate/judge.js';
import type { Measure } from '../../../src/study/validate/seen/measures.js';
import type { MostPeople } from '../../../src/study/validate/seen/people-compared.js';
import { causeOf } from '../../../src/study/validate/verdict.js';

const out = (topic: Measure['topic'], of: string, what: string, t: number): Judged => ({
  measure: { topic, of, what, value: 0.5, n: 50, sd: 0.1 },
  middle: 0.4,
  low: 0.35,
  high: 0.45,
  t,
  p: 0,
  adjusted: 0,
  agrees: false,
});
const people = (of: string, what: string, t: number): Judged => out('people', of, what, t),
  told = (judged: readonly Judged[], most: readonly (readonly [Judged, MostPeople])[] = []) =>
    causesOf(judged, new Map(most.map(([{ measure }, each]) => [measure, each])));
const named = (causes: ReturnType<typeof told>): string[] =>
  causes.map(({ of, what, follows }) => `${of} ${what}${follows ? ' follows' : ''}`);

describe('what follows from another gap', () => {
  it('is what comes to the next inspection, and what is left to the last', () => {
    const missed = out('finds', 'first', 'dirt found, of those that it or a later one finds', 5),
      comes = out('finds', 'first', 'dirt that comes to it, as found by it or later', 9),
      left = out('finds', 'last', 'dirt found in a visit, left by earlier ones', 8),
      other = out('finds', 'last', 'gap found in a visit, left by earlier ones', 4);
    expect(named(told([left, comes, other, missed]))).toEqual([
      `first ${missed.measure.what}`,
      `last ${other.measure.what}`,
      `first ${comes.measure.what} follows`,
      `last ${left.measure.what} follows`,
    ]);
    // More that comes is an input by itself: what is left to the last follows from it.
    expect(named(told([left, comes]))).toEqual([
      `first ${comes.measure.what}`,
      `last ${left.measure.what} follows`,
    ]);
  });

  it('is the wait of a truck, and people who meet less where there is less to do', () => {
    const slow = out('minutes', 'weld', 'working minutes', 4),
      road = out('minutes', 'ferry', 'minutes from loading to unloading', 9),
      idle = people('fitters', '', 8),
      cut = people('welders', '', 7);
    const most = [
      [idle, { real: 4, simulated: 5, isCut: false }],
      [cut, { real: 3, simulated: 4, isCut: true }],
    ] as const;
    expect(named(told([road, idle, cut, slow], most))).toEqual([
      'welders ',
      'weld working minutes',
      'ferry minutes from loading to unloading follows',
      'fitters  follows',
    ]);
    // Alone each is what the log shows.
    expect(named(told([road]))).toEqual(['ferry minutes from loading to unloading']);
    expect(named(told([idle], [most[0]]))).toEqual(['fitters ']);
  });

  it('is no second word about a crew that differs in the whole period', () => {
    const whole = people('fitters', 'shift 1', 8),
      later = people('fitters', 'shift 1, from 2027-09-20 on', 9),
      other = people('fitters', 'shift 2, from 2027-09-20 on', 3),
      each = { real: 4, simulated: 5, isCut: true };
    expect(
      named(
        told(
          [whole, later, other],
          [
            [whole, each],
            [later, each],
            [other, each],
          ],
        ),
      ),
    ).toEqual(['fitters shift 1', 'fitters shift 2, from 2027-09-20 on']);
  });

  it('is counted apart from inputs', () => {
    const slow = out('minutes', 'weld', 'working minutes', 9),
      coat = out('minutes', 'coat', 'working minutes', 8),
      road = out('minutes', 'ferry', 'minutes from loading to unloading', 7);
    expect(causeOf([], told([slow, coat, road]))).toMatch(
      / 1 more input does not agree\. 1 more gap may follow from these\.$/,
    );
    expect(causeOf([], told([slow, road]))).toMatch(/longer\. 1 more gap may follow from it\.$/);
  });
});
