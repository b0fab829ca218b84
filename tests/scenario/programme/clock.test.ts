import { describe, expect, it } from 'vitest';
import { programmeClock } from '../../../src/scenario/programme/clock.js';
import type { Programme } from '../../../src/scenario/types/programme.js';
import { dayShift, programme, scenario, site, station, step } from '../compile-scenario.js';

function clock(more: Partial<Programme>, holidays = dayShift.holidays) {
  return programmeClock(
    scenario({
      calendars: { days: { ...dayShift, holidays } },
      sites: { yard: site({ bay: station() }, { calendar: 'days' }) },
      route: [step('fit', 'bay')],
      programme: programme(more),
    }),
  );
}
const ramp: Programme['release'] = {
  kind: 'rate',
  phases: [
    { from: '2027-06-02', perDay: 2 },
    { from: '2027-06-10', perDay: 4 },
  ],
};

describe('programmeClock', () => {
  it('tells local dates and times on both sides of the change of the clock', () => {
    // Oslo, 2027-03-28: 02:00 winter time is 03:00 summer time (last Sunday of March).
    const oslo = clock({}),
      dateTime = (minutes: number) => oslo.dateTime(minutes),
      date = (minutes: number) => oslo.date(minutes);
    expect(dateTime(0)).toBe('2027-03-01T00:00:00');
    expect(dateTime(27 * 1440 + 119.5)).toBe('2027-03-28T01:59:30');
    expect(dateTime(27 * 1440 + 120)).toBe('2027-03-28T03:00:00');
    expect(date(28 * 1440 - 60)).toBe('2027-03-29');
    expect(date(28 * 1440 - 61)).toBe('2027-03-28');
    expect(date(Infinity)).toBeNull();
  });

  it('labels weeks as ISO 8601 does, the first from the start', () => {
    // 2027-06-02 is a Wednesday of week 22.
    const { buckets } = clock({ start: '2027-06-02', until: '2027-06-21', release: ramp });
    expect(buckets.unit).toBe('week');
    expect(buckets.labels).toEqual(['2027-W22', '2027-W23', '2027-W24']);
    expect(buckets.starts).toEqual(['2027-06-02', '2027-06-07', '2027-06-14']);
  });

  it('counts working days and the asked rate by week, holidays out', () => {
    const { buckets } = clock(
      { start: '2027-06-02', until: '2027-06-21', quantity: undefined, release: ramp },
      [{ from: '2027-06-09', to: '2027-06-09' }],
    );
    expect(buckets.workingDays).toEqual([3, 4, 5]);
    // Second week: Monday and Tuesday at 2, Thursday and Friday at 4.
    expect(buckets.asked).toEqual([2, 3, 4]);
  });

  it('asks for nothing once all units have been planned', () => {
    const { buckets } = clock({ start: '2027-06-02', until: '2027-06-21', quantity: 6, release: ramp });
    expect(buckets.asked).toEqual([2, null, null]);
  });

  it('counts the parts of days in a steady-state run, all of them together', () => {
    // 14 days of the calendar from a Monday: ten working days.
    const { buckets } = clock({ quantity: undefined, lengthMin: 14 * 1440, release: { kind: 'saturated' } });
    expect(buckets.unit).toBe('part');
    expect(buckets.labels[59]).toBe('part 60');
    expect(buckets.workingDays.reduce((a, b) => a + b, 0)).toBeCloseTo(10, 9);
    expect(new Set(buckets.asked)).toEqual(new Set([null]));
    expect(buckets.starts[1]).toBe('2027-03-01T05:36:00');
  });
});
