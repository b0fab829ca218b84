import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHORT_CARRIER, SHORT_CREW } from '../../src/flow/floor/states.js';
import { compile } from '../../src/scenario/compile.js';
import { capacity } from '../../src/study/capacity/capacity.js';
import { scenarioOf } from '../flow/dated/played.js';
import { minutesIn, play, shippedAt } from '../flow/run-yaml.js';

const example = (name: string): string =>
  readFileSync(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8');

/**
 * Best case of Hopp & Spearman, Factory Physics, ch. 7 (from memory): with w dollies and no chance, min(w /
 * T0, rb).
 */
describe('07-carriers.yaml, Penny Fab One', () => {
  it.each([1, 2, 3, 4, 5, 6])('makes min(w / 8 h, 0.5 an hour) with w = %i dollies', (w) => {
    const text = example('07-carriers'),
      { seen } = play(text.replace('count: 3', `count: ${w}`));
    expect(text).toContain('count: 3');
    // Between the first unit out, after 8 h, and the last of 60; over whole rounds of w units.
    const rounds = Math.floor(59 / w) * w,
      hours = (seen.shippedAt[rounds] - seen.shippedAt[0]) / 60;
    expect(seen.shippedAt[0]).toBe(480);
    expect(rounds / hours).toBeCloseTo(Math.min(w / 8, 0.5), 12);
  });

  it('is short of dollies for 2 of every 8 h with three of them', () => {
    // Units 1, 2, 3 begin at 0, 2, 4 h; 4 stands at the head press at 6 h and begins at 8 h, and so on: 19
    // waits for 60 units.
    expect(minutesIn(play(example('07-carriers')), 'head press', SHORT_CARRIER)).toBe(19 * 120);
  });
});

const hours = (played: Parameters<typeof shippedAt>[0]): number[] =>
  shippedAt(played).map((minutes) => minutes / 60);

describe('07-sent-back.yaml', () => {
  it('ships at 5, 8 and 11 h, and the cart is kept three times', () => {
    const played = play(example('07-sent-back'));
    expect(hours(played)).toEqual([5, 8, 11]);
    expect(played.seen.kept.ended[0]).toBe(3);
    // Three times a weld and a grind, and 1 and 1 h blocked behind the grinder.
    expect((played.seen.kept.held[0] * played.seen.minutes) / 60).toBeCloseTo(2 + 3 + 3, 9);
  });

  it('stands still at 3 h where the cart is claimed again', () => {
    const text = example('07-sent-back').replace('in rework: without', 'in rework: again');
    expect(play(text).seen).toMatchObject({ outcome: 'gridlock', endedAt: 180, shipped: 0 });
  });
});

describe('15-opening-carts.yaml', () => {
  it('ships at 2, 3, 5 and 7 h, with three carts at 2, 3, 4 and 6 h, and refuses one', () => {
    const text = example('15-opening-carts'),
      carts = (count: number): string => text.replace('count: 2', `count: ${count}`);
    expect(hours(play(text))).toEqual([2, 3, 5, 7]);
    expect(hours(play(carts(3)))).toEqual([2, 3, 4, 6]);
    expect(() => play(carts(1))).toThrow('no more units behind');
  });
});

describe('02-side-by-side.yaml', () => {
  it('takes 150 min a unit with room for five people, and 100 min with room for seven', () => {
    const text = example('02-side-by-side'),
      ends = (minutes: number): number[] => Array.from({ length: 10 }, (_, i) => minutes * (i + 1));
    expect(shippedAt(play(text))).toEqual(ends(150));
    expect(shippedAt(play(text.replace('people: 5', 'people: 7')))).toEqual(ends(100));
  });
});

describe('07-team-two-shifts.yaml', () => {
  const text = example('07-team-two-shifts'),
    days = (played: Parameters<typeof shippedAt>[0]): string[] =>
      hours(played).map((hour) => `${Math.floor(hour / 24)}d${hour % 24}`);

  it('ships ten cabins in twelve days, the first two on Wednesday, the third on Friday', () => {
    const played = play(text),
      out = shippedAt(played);
    expect(days(played).slice(0, 3)).toEqual(['2d22', '2d22', '4d14']);
    // 40 h of a team a day for 48 h: from the sixth on five in six days, to the minute.
    for (let unit = 5; unit + 5 < out.length; unit++) expect(out[unit + 5] - out[unit]).toBe(6 * 1440);
  });

  it('has by arithmetic the capacity that it ships, absence too', () => {
    const crew = (yaml: string): number | null | undefined => {
      const scenario = scenarioOf(yaml);
      return capacity(compile(scenario), scenario).rows.find(({ kind }) => kind === 'crew')?.capacityPerDay;
    };
    expect(crew(text)).toBeCloseTo(5 / 6, 9);
    // All of a pair have to be there: (0.9 ^ 2) x 8 h early alone.
    const pair = text.replace('headcount: [7, 4],', 'headcount: [2, 1], absence: 10 %,');
    expect(crew(pair)).toBeCloseTo((0.81 * 8) / 48, 9);
    expect(crew(pair.replace('[2, 1]', '[3, 1]'))).toBeCloseTo(((0.729 + 0.243) * 8) / 48, 9);
  });

  it('has five cabins of six days each where teams wait for their shift', () => {
    expect(text).toContain('hand over: next shift');
    const out = days(play(text.replace('hand over: next shift', 'hand over: wait')));
    expect(out.slice(0, 10)).toEqual([
      ...['5d14', '5d14', '5d14', '5d22', '5d22'],
      ...['11d14', '11d14', '11d14', '11d22', '11d22'],
    ]);
  });
});

describe('02-teams.yaml', () => {
  it('hands over a unit in 4 h, and in 2 h with five technicians', () => {
    const text = example('02-teams'),
      played = play(text);
    expect(shippedAt(played)).toEqual(Array.from({ length: 20 }, (_, i) => 240 * (i + 1)));
    // Every unit but the first stands in the battery bay from the end of the one before it for 2 h.
    expect(minutesIn(played, 'battery bay', SHORT_CREW)).toBe(19 * 120);
    // 2 people for 4 h and 1 for 1.5 h of 3 for 4 h.
    expect(played.seen.crewBusy[0]).toBeCloseTo(9.5 / 12, 12);
    expect(shippedAt(play(text.replace('technicians: 3', 'technicians: 5')))).toEqual(
      Array.from({ length: 20 }, (_, i) => 240 + 120 * i),
    );
  });
});
