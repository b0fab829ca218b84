import { describe, expect, it } from 'vitest';
import { UNLIMITED } from '../../../src/flow/model/model.js';
import { compile } from '../../../src/scenario/compile.js';
import type { Programme } from '../../../src/scenario/types/programme.js';
import { dayShift, minutes, programme, scenario, site, station, step } from '../compile-scenario.js';

/** One station in Oslo, on day shift (06:00-14:30 less a break 12:00-12:30: 480 min) or always open. */
function released(more: Partial<Programme>, isOpen = false) {
  return compile(
    scenario({
      calendars: { days: dayShift },
      sites: { yard: site({ bay: station() }, { calendar: isOpen ? undefined : 'days' }) },
      route: [step('fit', 'bay', { work: minutes(30) })],
      programme: programme(more),
    }),
  ).programme;
}
const rate = (...phases: [string, number][]): Pick<Programme, 'release'> => ({
  release: { kind: 'rate', phases: phases.map(([from, perDay]) => ({ from, perDay })) },
});

describe('release by rate', () => {
  it('puts two a day at the start of the shift and half its working time later', () => {
    expect([...released({ quantity: 5 }).times]).toEqual([360, 600, 1800, 2040, 3240]);
  });

  it('spreads over working minutes, with the break left out', () => {
    // Four a day: every 120 working minutes; the fourth at 360, which is the noon break, so at 12:30.
    expect([...released({ quantity: 5, ...rate(['2027-03-01', 4]) }).times]).toEqual([
      360, 480, 600, 750, 1800,
    ]);
  });

  it('carries a part of a unit over to the next day', () => {
    // 1.5 a day: counts 0 and 1 on Monday (1 at 2/3 of 480 = 320 min), 2 on Tuesday a third into the shift, 3
    // on Wednesday.
    const times = released({ quantity: 4, ...rate(['2027-03-01', 1.5]) }).times;
    const expected = [360, 680, 1800 + 160, 3240];
    expected.forEach((time, i) => {
      expect(times[i]).toBeCloseTo(time, 9);
    });
  });

  it('makes ten days at a tenth one unit exactly', () => {
    // Unit 2 goes at the first minute of the eleventh working day, Monday 2027-03-15.
    expect([...released({ quantity: 2, ...rate(['2027-03-01', 0.1]) }).times]).toEqual([
      360,
      14 * 1440 + 360,
    ]);
  });

  it('follows the ramp by date and waits where no rate is asked', () => {
    const times = [...released({ quantity: 5, ...rate(['2027-03-02', 1], ['2027-03-04', 3]) }).times];
    expect(times).toEqual([1440 + 360, 2 * 1440 + 360, 3 * 1440 + 360, 3 * 1440 + 520, 3 * 1440 + 680]);
  });

  it('keeps clock time when summer time begins', () => {
    // 2027-03-28 is the change day in Oslo: Monday 29 March begins one hour sooner than 28 days of 24 h.
    const times = released({ quantity: 21, ...rate(['2027-03-01', 1]) }).times;
    expect(times[19]).toBe(25 * 1440 + 360);
    expect(times[20]).toBe(28 * 1440 - 60 + 360);
  });

  it('spreads over 24 hours where the site is always open', () => {
    expect([...released({ quantity: 3 }, true).times]).toEqual([0, 720, 1440]);
  });

  it('stops at `until` and at the quantity, whichever is first', () => {
    expect(released({ quantity: 100, until: '2027-03-08' }).times).toHaveLength(10);
    expect(released({ quantity: undefined, until: '2027-03-08' }).times).toHaveLength(10);
    expect(released({ quantity: 3, until: '2027-03-08' }).times).toHaveLength(3);
  });

  it('refuses a plan that never releases the last unit', () => {
    expect(() => released({ quantity: 10, ...rate(['2027-03-01', 1], ['2027-03-03', 0]) })).toThrow(
      /got none; raise the last rate/,
    );
  });
});

describe('the span of a run', () => {
  it('ends calendars a year after the planned release of a short programme', () => {
    const model = compile(
      scenario({
        calendars: { days: dayShift },
        sites: { yard: site({ bay: station() }, { calendar: 'days' }) },
        route: [step('fit', 'bay')],
        programme: programme({ quantity: 10 }),
      }),
    );
    expect(model.horizon).toBeGreaterThan(370 * 1440);
    expect(model.horizon).toBeLessThan(380 * 1440);
    expect(model.programme.end).toBe(Infinity);
    expect(model.calendars[0].end.at(-1)).toBeLessThanOrEqual(model.horizon);
  });

  it('leaves a saturated line twice the time its slowest step needs, or a year', () => {
    const build = (quantity: number) =>
      compile(
        scenario({
          calendars: { days: dayShift },
          sites: { yard: site({ bay: station() }, { calendar: 'days' }) },
          route: [step('fit', 'bay', { work: minutes(480) })],
          programme: programme({ quantity, release: { kind: 'saturated' } }),
        }),
      ).horizon;
    // One a working day, 700 of them are 140 weeks.
    expect(build(700)).toBeGreaterThan(1.8 * 140 * 7 * 1440);
    expect(build(5)).toBeGreaterThan(365 * 1440);
  });

  it('has no horizon where no calendar is used', () => {
    const model = compile(
      scenario({
        calendars: { days: dayShift },
        sites: { yard: site({ bay: station() }) },
        route: [step('fit', 'bay')],
      }),
    );
    expect(model.horizon).toBe(Infinity);
    expect(model.calendars).toHaveLength(0);
  });

  it('ends at `until`, midnight in the programme zone, over the change of the clock', () => {
    const { end, bucketEdges } = released({ until: '2027-03-29' });
    expect(end).toBe(28 * 1440 - 60);
    expect([...bucketEdges]).toEqual([0, 7 * 1440, 14 * 1440, 21 * 1440, 28 * 1440 - 60]);
  });

  it('begins weeks on Mondays where the programme begins midweek', () => {
    const { bucketEdges } = released({
      start: '2027-03-03',
      until: '2027-03-17',
      ...rate(['2027-03-03', 2]),
    });
    expect([...bucketEdges]).toEqual([0, 5 * 1440, 12 * 1440, 14 * 1440]);
  });

  it('parts the observed time of a steady-state run in sixty', () => {
    const { bucketEdges, end, quantity, warmUp } = released({
      quantity: undefined,
      lengthMin: 6000,
      warmUpMin: 500,
      release: { kind: 'saturated' },
    });
    expect(bucketEdges).toHaveLength(61);
    expect([bucketEdges[0], bucketEdges[1], bucketEdges[60]]).toEqual([500, 600, 6500]);
    expect([end, quantity, warmUp]).toEqual([6500, UNLIMITED, 500]);
  });
});

describe('release from the middle of a day on', () => {
  // Four a day go at 6:00, 8:00, 10:00 and, behind the break, 12:30; times count from the start.
  it('is what the rate would have released from then on', () => {
    const at = (startMin: number): number[] => [
      ...released({ quantity: 4, startMin, ...rate(['2027-03-01', 4]) }).times,
    ];
    expect(at(600)).toEqual([0, 150, 1200, 1320]);
    expect(at(601)).toEqual([149, 1199, 1319, 1439]);
    // The shift is over.
    expect(at(900)).toEqual([900, 1020, 1140, 1290]);
  });

  it('leaves out the clock times that have passed', () => {
    const { release } = rate(['2027-03-01', 2]);
    const { times } = released({
      quantity: 3,
      startMin: 600,
      release: { ...release, at: { minutes: [390, 700], on: undefined } } as Programme['release'],
    });
    expect([...times]).toEqual([100, 1230, 1540]);
  });

  it('spreads units with that day of release over the rest of it', () => {
    const order = { build: undefined, due: undefined, options: {}, at: undefined, written: { path: [] } };
    const { times } = released({
      quantity: 2,
      startMin: 600,
      orders: {
        list: [
          { ...order, release: '2027-03-01' },
          { ...order, release: '2027-03-01' },
        ],
        dueAfterMin: undefined,
        replaceScrapped: false,
      },
    });
    expect([...times]).toEqual([0, 150]);
  });
});
