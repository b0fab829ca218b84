import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Calendar } from '../../../src/flow/floor/calendar.js';
import type { CalendarColumns } from '../../../src/flow/model/time.js';

/** When work ends that begins only in a shift in which it can end. */
function advanceInOneShift(calendar: Calendar, from: number, minutes: number): number {
  const start = calendar.startInOneShift(from, minutes);
  return start === Infinity ? Infinity : calendar.advance(start, minutes);
}

/** Rows are [start, end, shiftEnd]. */
function columns(rows: readonly (readonly [number, number, number])[]): CalendarColumns {
  let sum = 0;
  const before = rows.map(([start, end]) => {
    const here = sum;
    sum += end - start;
    return here;
  });
  return {
    start: Float64Array.from(rows, (r) => r[0]),
    end: Float64Array.from(rows, (r) => r[1]),
    before: Float64Array.from(before),
    shiftEnd: Float64Array.from(rows, (r) => r[2]),
    overtime: new Uint8Array(rows.length),
    rules: new Int32Array(rows.length),
  };
}

// Two days of 06:00-14:30 with a break 12:00-12:30, then a short Wednesday 06:00-09:00: hand arithmetic
// below.
const rows = [
  [360, 720, 870],
  [750, 870, 870],
  [1800, 2160, 2310],
  [2190, 2310, 2310],
  [3240, 3420, 3420],
] as const;
const calendar = new Calendar(columns(rows));

/** Slow second computation of `advance`: walk through the windows. */
function walk(from: number, minutes: number): number {
  if (minutes === 0) return from;
  let rest = minutes;
  for (const [start, end] of rows) {
    const begin = Math.max(from, start);
    if (begin >= end) continue;
    if (rest <= end - begin) return begin + rest;
    rest -= end - begin;
  }
  return Infinity;
}

describe('Calendar', () => {
  it('counts working minutes between two times', () => {
    expect(calendar.worked(0, 360)).toBe(0);
    expect(calendar.worked(0, 870)).toBe(480);
    expect(calendar.worked(400, 450)).toBe(50);
    expect(calendar.worked(700, 760)).toBe(30);
    expect(calendar.worked(800, 1860)).toBe(130);
    expect(calendar.worked(0, Infinity)).toBe(1140);
    expect(calendar.worked(720, 750)).toBe(0);
    expect(calendar.worked(500, 400)).toBe(0);
  });

  it('stops work at a break and at a shift end and resumes it', () => {
    expect(calendar.advance(700, 30)).toBe(760);
    expect(calendar.advance(860, 30)).toBe(1820);
    expect(calendar.advance(0, 1140)).toBe(3420);
    expect(calendar.advance(0, 1141)).toBe(Infinity);
    expect(calendar.advance(3420, 1)).toBe(Infinity);
  });

  it('ends work that ends with a window at the window end, not at the next start', () => {
    expect(calendar.advance(700, 20)).toBe(720);
    expect(calendar.advance(0, 360)).toBe(720);
    expect(calendar.advance(900, 480)).toBe(2310);
    // 0.1 + 0.2 > 0.3 in doubles: the excess of 4e-17 must not send the work to the next day.
    expect(calendar.advance(870 - 0.3, 0.1 + 0.2)).toBe(870);
  });

  it('leaves a time as it is when no minutes are asked for', () => {
    expect(calendar.advance(100, 0)).toBe(100);
    expect(calendar.advance(9999, 0)).toBe(9999);
    expect(advanceInOneShift(calendar, 730, 0)).toBe(730);
  });

  it('starts one-shift work only where the shift can end it, across its breaks', () => {
    expect(advanceInOneShift(calendar, 360, 480)).toBe(870);
    expect(advanceInOneShift(calendar, 361, 480)).toBe(2310);
    expect(advanceInOneShift(calendar, 700, 140)).toBe(870);
    expect(advanceInOneShift(calendar, 700, 141)).toBe(1800 + 141);
    expect(advanceInOneShift(calendar, 2200, 180)).toBe(3420);
    expect(advanceInOneShift(calendar, 2200, 181)).toBe(Infinity);
    expect(advanceInOneShift(calendar, 0, 481)).toBe(Infinity);
    expect(advanceInOneShift(calendar, 730, 120)).toBe(870);
  });

  it('says when one-shift work starts', () => {
    expect(calendar.startInOneShift(700, 140)).toBe(700);
    expect(calendar.startInOneShift(700, 141)).toBe(1800);
    expect(calendar.startInOneShift(900, 10)).toBe(1800);
    expect(calendar.startInOneShift(0, 481)).toBe(Infinity);
  });

  it('keeps two shifts that touch apart', () => {
    const touching = new Calendar(
      columns([
        [0, 480, 480],
        [480, 960, 960],
      ]),
    );
    expect(touching.advance(400, 100)).toBe(500);
    expect(touching.advance(400, 80)).toBe(480);
    expect(advanceInOneShift(touching, 400, 100)).toBe(580);
    expect(touching.nextAttended(480)).toBe(480);
  });

  it('tells when somebody is there next, the very ends of windows included', () => {
    expect([0, 360, 720, 721, 760, 870, 871, 3420].map((t) => calendar.nextAttended(t))).toEqual([
      360, 360, 720, 750, 760, 870, 1800, 3420,
    ]);
    expect(calendar.nextAttended(3421)).toBe(Infinity);
  });

  it('has no working time without windows', () => {
    const never = new Calendar(columns([]));
    expect(never.advance(0, 1)).toBe(Infinity);
    expect(never.nextAttended(0)).toBe(Infinity);
    expect(never.worked(0, 100)).toBe(0);
  });

  it('agrees with a walk through the windows, and worked undoes advance, in any order of calls', () => {
    // Tolerance 1e-8 minutes: the calendar's own rounding allowance.
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3500, noNaN: true }),
        fc.double({ min: 0, max: 1200, noNaN: true }),
        (from, minutes) => {
          const at = calendar.advance(from, minutes);
          const slow = walk(from, minutes);
          if (slow === Infinity || at === Infinity)
            return at === slow || minutes - calendar.worked(from, Infinity) < 1e-7;
          return (
            Math.abs(calendar.worked(from, at) - minutes) < 1e-7 &&
            (Math.abs(at - slow) < 1e-7 || calendar.worked(at, slow) < 1e-7)
          );
        },
      ),
      { seed: 20270301, numRuns: 2000 },
    );
  });
});
