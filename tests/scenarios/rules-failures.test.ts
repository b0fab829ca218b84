import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BLOCKED, DOWN, STARVED, WORKING } from '../../src/flow/floor/states.js';
import { shippedUpTo } from '../../src/study/programme/pairs.js';
import { withoutVariant } from '../../src/study/simulate/without-outages.js';
import { minutesIn, type Played, play, playModel, shippedAt } from '../flow/run-yaml.js';

const played = (name: string): Played =>
  play(readFileSync(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8'));

/** The examples of rules 1, 13 and 16, by hand. Minutes since midnight before the first day. */
describe('scenarios/rules', () => {
  it('01-places: the saw is blocked once, from 60 to 70', () => {
    // Welds: unit 1 10-40, 2 20-50, 3 40-70, 4 50-80, 5 70-100, 6 80-110.
    const run = played('01-places');
    expect(shippedAt(run)).toEqual([40, 50, 70, 80, 100, 110]);
    expect([WORKING, BLOCKED, STARVED].map((state) => minutesIn(run, 'saw', state))).toEqual([60, 10, 40]);
  });

  it('01-pulse-line: moves each 70 minutes while a unit is at the marriage', () => {
    const run = played('01-pulse-line');
    // Unit 1 enters at 0 by the clock, with nobody on shift before 06:00 (360): the move at 420 is 60 working
    // minutes later.
    expect(shippedAt(run)).toEqual([360 + 200, 360 + 270, 360 + 330]);
    expect(run.seen.pulseLines[0]).toEqual({
      moves: 5,
      minutesBetween: 330,
      late: 3,
      lateMinutes: Float64Array.of(0, 30, 0, 0),
    });
  });

  it('13-failures: the booth is broken off at 08:30, 11:30 and 14:30, the press stands from 09:00 to 10:00', () => {
    // Booth: 360-420, -480, 480-510 and 540-570, -630, -690 (the next failure falls on its end: down to 720),
    // 720-780, -840, 840-870 and 900-930.
    const run = played('13-failures');
    expect(shippedAt(run)).toEqual([440, 500, 620, 650, 710, 800, 860, 950]);
    expect([WORKING, DOWN].map((state) => minutesIn(run, 'booth', state))).toEqual([480, 90]);
    expect([WORKING, DOWN].map((state) => minutesIn(run, 'press', state))).toEqual([160, 60]);
    expect([Array.from(run.seen.failures.count), Array.from(run.seen.failures.minutes)]).toEqual([
      [3, 1],
      [90, 60],
    ]);
  });

  it('13-outage: ten working days of four units are lost at first, and made good in some ten weeks', () => {
    // By fluid arithmetic 40 units at 0.8 a day: 50 working days, 70 days. Two standard deviations of a sum
    // of 290 times of cv 0.3 are 3.5 % of 4.8 a day: 0.63 to 0.97.
    const { model, seen } = played('13-outage'),
      without = playModel(withoutVariant(model, [0]).model, 'flow', 1).seen,
      { programme } = model,
      days = 26 * 7,
      [first, over] = [63, 75];
    expect([model.outages.from[0], model.outages.to[0]]).toEqual([first * 1440, over * 1440]);
    const behind = shippedUpTo(without, days).map((units, day) => units - shippedUpTo(seen, days)[day]);
    expect(behind.subarray(0, first).every((units) => units === 0)).toBe(true);
    expect(behind[over - 1]).toBeGreaterThan(35);
    expect(behind[over - 1]).toBeLessThanOrEqual(40);
    const level = behind.findIndex((units, day) => day > over && units <= 0) - over;
    expect(level).toBeGreaterThan((38 / 0.97 / 5) * 7 - 7);
    expect(level).toBeLessThan((42 / 0.63 / 5) * 7 + 7);
    expect([seen.outcome, seen.shipped]).toEqual(['finished', programme.quantity]);
  });

  it("16-gridlock: ends at 20 with two units in each other's way", () => {
    const { seen } = played('16-gridlock');
    expect(seen).toMatchObject({ outcome: 'gridlock', endedAt: 20, shipped: 0 });
    expect(seen.standstill.ring.map(({ where, lacks: [{ name }] }) => [where, name])).toEqual([
      ['mill', 'lathe'],
      ['lathe', 'mill'],
    ]);
  });
});
