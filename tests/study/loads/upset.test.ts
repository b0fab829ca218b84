import { describe, expect, it } from 'vitest';
import type { Load } from '../../../src/study/loads/load.js';
import { type Covered, upset } from '../../../src/study/loads/upset.js';
import { weightsOver } from '../../../src/study/loads/weights.js';

const load = (cycleDays: number, more: Partial<Load> = {}): Load => ({
  what: 'trucks',
  units: cycleDays,
  cycleDays,
  isTimed: false,
  underWayDays: 0,
  step: 0,
  ...more,
});
/** One unit a day, day and night, all week. */
const covered = (days: number, more: Partial<Covered> = {}): Covered => ({
  days,
  cells: days,
  perDay: 1,
  ceiling: Infinity,
  week: { days: 7, share: 1 },
  ...more,
});

describe('what loads can make of a count', () => {
  it('is nothing without loads', () => {
    expect(upset([], weightsOver(20, []), covered(20))).toBe(0);
  });

  it('is what a load more or less makes in a plain count', () => {
    // Trucks of 10 in 25 days: two or three, 20 or 30 units for 25; in 21 days 20 or 30 for 21; in 20 always 20.
    expect(upset([load(10)], weightsOver(25, []), covered(25))).toBeCloseTo(5, 9);
    expect(upset([load(10)], weightsOver(21, []), covered(21))).toBeCloseTo(9, 9);
    expect(upset([load(10)], weightsOver(20, []), covered(20))).toBeCloseTo(0, 9);
  });

  it('is nothing over whole cycles of whole days, and little over others', () => {
    expect(upset([load(10)], weightsOver(25, [10]), covered(25))).toBeCloseTo(0, 9);
    expect(upset([load(9.3)], weightsOver(61, [27.9]), covered(61))).toBeLessThan(1);
    expect(upset([load(9.3)], weightsOver(61, []), covered(61))).toBeGreaterThan(4);
  });

  it('is what is left over of one load in the next where these have no common measure', () => {
    // Of trucks of 10, lots of 8 leave 0, 2, 4 or 6 over: a box for both is one of 40.
    const both = [load(10), load(8)];
    expect(upset(both, weightsOver(100, [40]), covered(100))).toBeCloseTo(0, 9);
    expect(upset(both, weightsOver(100, [10, 8]), covered(100))).toBeGreaterThan(1);
  });

  it('is evened out by who can do no more than what comes', () => {
    const busy = covered(25, { ceiling: 1.001 });
    expect(upset([load(10)], weightsOver(25, []), busy)).toBeLessThan(1.1);
  });

  it('reckons with drives and ovens that go on at weekends', () => {
    // 1.95 a day, trucks of 10 and lots of 8: one every 5.13 working days, which falls behind the week so slowly
    // that for months no truck is under way at a weekend, and then each is.
    const week = { days: 5, share: 1 / 3 },
      weights = weightsOver(130, [20.5, 20, 20.5]),
      chain = (drive: number, bake: number): number =>
        upset(
          [load(10 / 1.95, { underWayDays: drive }), load(8 / 1.95, { underWayDays: bake })],
          weights,
          covered(130, { perDay: 1.95, week }),
        );
    expect(chain(20 / 24, 0.5)).toBeGreaterThan(chain(0, 0) + 1);
  });
});
