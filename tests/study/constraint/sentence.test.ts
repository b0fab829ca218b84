import { describe, expect, it } from 'vitest';
import type { Thing } from '../../../src/scenario/reliefs/thing.js';
import type { ConstraintResult, Tried } from '../../../src/study/constraint/results.js';
import { calledThing, constraintSentence, helps, stopsIt } from '../../../src/study/constraint/sentence.js';

const thing = (kind: Thing['kind'], name: string, site = 'a'): Thing => ({ kind, name, site });
const gained = (of: Thing, what: string, mean: number, half = 0.05): Tried => ({
  thing: of,
  what,
  gain: { mean, low: mean - half, high: mean + half, level: 0.99, n: 20 },
});
const booth = gained(thing('station', 'booth'), 'one place more at booth', 0.3),
  painters = gained(thing('crew', 'painters'), 'one person more in painters (a)', 0.2),
  oven = gained(thing('station', 'oven'), 'one place more at oven', 0.01),
  road = gained(thing('lane', 'road'), 'one truck more on road', -0.01);
const found = (
  outcome: ConstraintResult['outcome'],
  tried: readonly Tried[],
  culprit: Tried | null = null,
): Omit<ConstraintResult, 'sentence'> => ({
  outcome,
  culprit,
  replications: 20,
  zone: 0.03,
  shippedPerDay: { mean: 3, low: 2.9, high: 3.1, level: 0.95, n: 20 },
  tried,
  waiting: [{ thing: thing('station', 'booth'), units: 4 }],
  ladder: null,
  judged: null,
});
const sentence = (...of: Parameters<typeof found>): string => constraintSentence(found(...of));

describe('what stops a build, in a sentence', () => {
  it('names what was tried and helped, what it brings, and the next best', () => {
    expect(sentence('proven', [booth, painters, oven, road], booth)).toBe(
      'The station booth stops it: with one place more at booth it ships 0.30 a day more ' +
        '(99 % CI 0.25 to 0.35). Next best of 4 tried: one person more in painters (a), 0.20 a day more ' +
        '(0.15 to 0.25).',
    );
  });

  it('says that others do not help, and how many', () => {
    expect(sentence('proven', [booth, oven, road], booth)).toBe(
      'The station booth stops it: with one place more at booth it ships 0.30 a day more ' +
        '(99 % CI 0.25 to 0.35). None of the 2 others that were tried helps.',
    );
    expect(sentence('proven', [booth, road], booth)).toMatch(
      /\. The other one that was tried does not help\.$/,
    );
    expect(sentence('proven', [booth], booth)).toMatch(/0\.25 to 0\.35\)\.$/);
  });

  it('says what is as good, be it by chance a little better', () => {
    const hours = gained(
      thing('hours', 'days', ''),
      'one hour of overtime a day in "days" (15:00 to 16:00)',
      0.32,
    );
    expect(sentence('proven', [hours, booth], booth)).toMatch(
      / As good: one hour of overtime a day in "days" \(15:00 to 16:00\), 0\.32 a day more \(0\.27 to 0\.37\)\.$/,
    );
  });

  it('says what is better still: an hour more helps whatever keeps its calendar', () => {
    const hours = gained(
      thing('hours', 'days', ''),
      'one hour of overtime a day in "days" (15:00 to 16:00)',
      0.5,
    );
    expect(sentence('proven', [hours, booth, road], booth)).toMatch(
      / Better still: one hour of overtime a day in "days" \(15:00 to 16:00\), 0\.50 a day more /,
    );
  });

  it('reads well where what is more is a plural or a sum', () => {
    const deliveries = gained(
      thing('supply', 'packs'),
      'two deliveries of packs in 7 days instead of one',
      2,
      0,
    );
    expect(sentence('proven', [deliveries], deliveries)).toBe(
      'The supply of packs stops it: with two deliveries of packs in 7 days instead of one it ships ' +
        '2 a day more (the same in all 20 replications).',
    );
  });

  it('says that nothing helps by itself, with the best of what was tried', () => {
    expect(sentence('none helps', [oven, road])).toBe(
      'No single thing helps: the best of 2 tried is one place more at oven, 0.01 a day more ' +
        '(-0.04 to 0.06). Perhaps only two at once would help, or something that was not tried.',
    );
    expect(sentence('none helps', [oven])).toMatch(
      /^The one thing that was tried does not help: one place more at oven, 0\.01 a day more/,
    );
    const little = gained(thing('station', 'jig'), 'one place more at jig', 0.02, 0.01);
    expect(sentence('none helps', [little, road])).toMatch(
      /^No single thing brings enough to matter: the best of 2 tried is one place more at jig, 0\.020 a day more/,
    );
    expect(sentence('none helps', [little])).toMatch(
      /^The one thing that was tried brings too little: one place more at jig, /,
    );
    expect(sentence('none helps', [road])).toMatch(
      /^The one thing that was tried does not help: one truck more on road, -0\.01 a day \(-0\.06 to 0\.04\)\./,
    );
    expect(sentence('none helps', [])).toBe(
      'What stops it is not known: nothing was found of which there could be more.',
    );
  });

  it('says that what is asked is what limits a build that nothing stops', () => {
    expect(sentence('rate asked', [])).toBe('The rate asked is what limits it: it is held.');
    expect(sentence('rate asked', [oven, road])).toBe(
      'What arrives is what limits it: none of the 2 things that were tried brings more.',
    );
    expect(sentence('rate asked', [oven])).toBe(
      'What arrives is what limits it: the one thing that was tried brings no more.',
    );
  });

  it('of one replication gives the hint', () => {
    expect(sentence('not settled', [oven])).toBe(
      'What stops it cannot be told from one replication. Most units wait for the station booth.',
    );
  });

  it('goes on behind an answer in small letters; nothing where no cause is proven', () => {
    expect(stopsIt(found('proven', [booth], booth))).toBe(
      'the station booth stops it: with one place more at booth it ships 0.30 a day more ' +
        '(99 % CI 0.25 to 0.35)',
    );
    expect(stopsIt(found('none helps', [oven]))).toBeNull();
  });
});

describe('things, ahead of a verb in the singular', () => {
  it.each([
    [thing('station', 'booth'), 'the station booth'],
    [thing('crew', 'painters'), 'the crew painters (a)'],
    [thing('team', 'trim team'), 'the team trim team (a)'],
    [thing('carrier', 'dollies'), 'the number of dollies'],
    [thing('lane', 'road', 'a to b'), 'the lane road'],
    [thing('room', 'oven'), 'the room ahead of oven'],
    [thing('feeder', 'doors'), 'the feeder doors'],
    [thing('supply', 'packs'), 'the supply of packs'],
    [thing('hours', 'days', ''), 'the calendar "days"'],
    [thing('step', 'prime'), 'the step prime'],
  ])('%o is called %s', (of, called) => {
    expect(calledThing(of)).toBe(called);
  });
});

describe('a trial helps', () => {
  it('if it surely brings units, and more than do not matter', () => {
    expect(helps(booth, 0.03)).toBe(true);
    expect(helps(booth, 0.3)).toBe(false);
    expect(helps(oven, 0)).toBe(false);
    expect(helps({ ...booth, gain: { ...booth.gain, low: null } }, 0)).toBe(false);
  });
});
