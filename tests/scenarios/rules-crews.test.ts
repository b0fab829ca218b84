import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { OFF_SHIFT, SHORT_CREW, WORKING } from '../../src/flow/floor/states.js';
import { minutesIn, type Played, play, shippedAt } from '../flow/run-yaml.js';

/**
 * What the first lines of the scenarios of rule 3 promise, by hand. 1 March 2027 is a Monday, 00:00 is time
 * 0.
 */
const H = 60,
  DAY = 1440;
const rule = (name: string, edit: (text: string) => string = (text) => text): Played =>
  play(edit(readFileSync(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8')));

describe('scenarios/rules/03-shifts.yaml', () => {
  it('has units fitted on Monday at 16:00 and on Tuesday at 07:20 and 16:00', () => {
    // Without the test, shipping is the end of fitting.
    const played = rule('03-shifts', (text) => text.replace(/^.*step: test.*$/m, ''));
    expect(shippedAt(played).slice(0, 3)).toEqual([16 * H, DAY + 7 * H + 20, DAY + 16 * H]);
    expect(minutesIn(played, 'floor', WORKING)).toBe(60 * 10 * H);
  });

  it('ships all, with tests by people who are there', () => {
    const { seen } = rule('03-shifts');
    expect(seen.shipped).toBe(60);
    // Testers: two on each of two shifts of 8 h, less those who are missing.
    const [testers] = [...seen.crewTime.usual].slice(1),
      most = 2 * 16 * H * 21;
    expect(testers).toBeLessThan(most);
    expect(testers).toBeGreaterThan(0.8 * 2 * 16 * H * 19);
  });
});

describe('scenarios/rules/03-overtime.yaml', () => {
  it('ships five, four and five units in its first weeks, and nothing while it is shut', () => {
    const played = rule('03-overtime'),
      out = shippedAt(played),
      week = 7 * DAY;
    expect(
      [0, 1, 2, 3].map((w) => out.filter((time) => time >= w * week && time < (w + 1) * week).length),
    ).toEqual([5, 4, 5, 0]);
    expect(out.slice(0, 5)).toEqual([0, 1, 2, 3, 4].map((day) => day * DAY + 17 * H));
    // Oslo has put its clocks forward on 28 March.
    expect(out[14]).toBe(4 * week + 13 * H - H);
    expect(played.seen.crewTime.overtime[0]).toBeGreaterThanOrEqual(5 * 2 * H + 5 * 2 * H + 4 * H);
  });
});

describe('scenarios/rules/03-overtime-due.yaml', () => {
  it('works overtime on Thursday and Friday, and ships the urgent unit on Friday at 13:00', () => {
    const played = rule('03-overtime-due');
    expect(shippedAt(played)).toEqual([DAY + 9 * H, 2 * DAY + 11 * H, 3 * DAY + 13 * H, 4 * DAY + 13 * H]);
    expect(played.seen.overtimeRules.looked[0]).toBe(5);
    expect(played.seen.overtimeRules.worked[0]).toBe(2);
  });
});

describe('scenarios/rules/03-in-one-shift.yaml', () => {
  it('ships on Tuesday and Wednesday at 07:00', () => {
    const played = rule('03-in-one-shift');
    expect(shippedAt(played)).toEqual([DAY + 7 * H, 2 * DAY + 7 * H]);
    expect(minutesIn(played, 'booth', SHORT_CREW)).toBe(0);
    // Oven: 16:00-07:00 for each of the two.
    expect(minutesIn(played, 'oven', OFF_SHIFT)).toBe(2 * 15 * H);
  });
});
