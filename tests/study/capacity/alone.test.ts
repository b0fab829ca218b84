import { describe, expect, it } from 'vitest';
import { Calendar } from '../../../src/flow/floor/calendar.js';
import { type Leg, load, meanTimeAlone } from '../../../src/study/capacity/way/alone.js';

const DAY = 1440;
/** Open from 0 to `open` minutes of each of so many days. */
function shifts(open: number, days: number): Calendar {
  const starts = Array.from({ length: days }, (_, day) => day * DAY);
  return new Calendar({
    start: Float64Array.from(starts),
    end: Float64Array.from(starts, (start) => start + open),
    before: Float64Array.from(starts, (_, day) => day * open),
    shiftEnd: Float64Array.from(starts, (start) => start + open),
    overtime: new Uint8Array(days),
    rules: new Int32Array(days),
  });
}
const noons = Float64Array.from({ length: 200 }, (_, day) => day * DAY + 720);
const days = shifts(480, 200),
  span = 100 * DAY;

describe('the mean time of a unit alone', () => {
  it.each<[string, Leg[], Calendar | null, number]>([
    ['by the clock is the sum of its legs', [{ calendar: null, minutes: 90 }], null, 90],
    // 90 min of work, 8 h of 24: 90 x 3.
    ['in a third of the day is three times its work', [{ calendar: days, minutes: 90 }], days, 270],
    // Begun evenly over 24 h: half a day on average.
    ['up to the next of daily departures is half a day', [{ departures: noons, share: 1 }], null, 720],
    [
      'of which a quarter of the units has to make it, an eighth',
      [{ departures: noons, share: 0.25 }],
      null,
      180,
    ],
    // Begun between 0:00 and 8:00, 4 h on average, for noon: 8 h.
    ['from a shift up to noon is from its middle', [{ departures: noons, share: 1 }], days, 480],
    // A bake of 4 h begun in the first half of the shift ends in it; in the second half it waits for the next
    // morning, 20 to 16 h after its beginning, 18 on average.
    [
      'of a bake at the end of which it is night, up to work, is the bake, or until the morning',
      [
        { calendar: null, minutes: 240 },
        { calendar: days, minutes: 1e-9 },
      ],
      days,
      (4 * 60 + 18 * 60) / 2,
    ],
  ])('%s', (_, legs, begins, expected) => {
    // Two thousand units spread evenly: within 1 %.
    expect(meanTimeAlone(legs, begins, span, null) / expected).toBeCloseTo(1, 2);
  });

  it('in hours of a crew leaves the nights out', () => {
    expect(meanTimeAlone([{ calendar: days, minutes: 90 }], days, span, days)).toBeCloseTo(90, 6);
  });

  it('is not known where the timetable ends before all', () => {
    expect(meanTimeAlone([{ departures: Float64Array.of(), share: 1 }], null, span, null)).toBeNaN();
  });
});

describe('units that go on together', () => {
  it.each([
    // Ten, ten minutes apart: the first waits 90, the last 0.
    ['a full load', [10, 1, 10, Infinity], { together: 10, wait: 45 }],
    // Every 10 min, off after 35: at 0, 10, 20, 30; they wait 35, 25, 15, 5.
    ['a longest wait', [10, 1, 10, 35], { together: 4, wait: 20 }],
    // No less than three, and no wait beyond: at 0, 10, 20.
    ['a lot as soon as there are enough', [10, 3, 8, 0], { together: 3, wait: 10 }],
    ['one that goes alone', [10, 1, 1, Infinity], { together: 1, wait: 0 }],
  ] as const)('%s', (_, [apart, least, most, longest], expected) => {
    expect(load(apart, least, most, longest)).toEqual(expected);
  });
});
