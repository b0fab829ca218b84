import { describe, expect, it } from 'vitest';
import { lateOrders, shippedByDay } from '../../../src/study/forecast/besides.js';
import { StandingByDay } from '../../../src/study/validate/seen/standing-by-day.js';
import { validateStudy } from '../../../src/study/validate/validate.js';
import { logOf, scenarioOf, shop, sourceOf } from './shop.js';

const DAY = 1440;

describe('units standing by day', () => {
  it('are means over each day, also of a stay over midnight and of a last day that is short', () => {
    const standing = new StandingByDay(600, 600 + 2.5 * DAY, 2);
    // Two units at the first place for the last quarter of day 1 and the first half of day 2.
    standing.book(600 + 0.75 * DAY, 600 + 1.5 * DAY, Int32Array.of(2, 0));
    // One at the second over the whole of the last, short day.
    standing.book(600 + 2 * DAY, 600 + 2.5 * DAY, Int32Array.of(0, 1));
    expect(standing.days).toBe(3);
    const mean = (place: number): number[] => [0, 1, 2].map((day) => standing.mean(place, day));
    expect(mean(0)).toEqual([0.5, 1, 0]);
    expect(mean(1)).toEqual([0, 0, 1]);
  });

  it('are those that a tally of entries and shippings in the log gives', async () => {
    const scenario = scenarioOf(shop({ units: 40 })),
      events = logOf(scenario, 'real'),
      { wipByDay, byDay } = await validateStudy({
        scenario,
        file: 'shop.yaml',
        log: sourceOf(events),
        seed: 'model',
        replications: 10,
      });
    const from = Date.parse('2027-03-01T00:00+01:00') / 60_000,
      to = from + byDay.length * DAY,
      inside = Array<number>(byDay.length).fill(0),
      shipped = Array<number>(byDay.length).fill(0);
    for (const { kind, object, at } of events) {
      if (kind === 'ship' && at < to)
        for (let day = Math.floor((at - from) / DAY); day < byDay.length; day++) shipped[day]++;
      if (kind !== 'enter') continue;
      const out = events.find((each) => each.kind === 'ship' && each.object === object)?.at ?? Infinity;
      inside.forEach((_, day) => {
        const minutes = Math.min(out, from + (day + 1) * DAY) - Math.max(at, from + day * DAY);
        inside[day] += Math.max(0, minutes) / DAY;
      });
    }
    expect(wipByDay).toHaveLength(1);
    expect(wipByDay[0]).toMatchObject({ place: 'body shop', kind: 'site' });
    wipByDay[0].real.forEach((units, day) => {
      expect(units).toBeCloseTo(inside[day], 6);
    });
    expect(byDay.map(({ real }) => real)).toEqual(shipped);
    wipByDay[0].low.forEach((low, day) => {
      expect(low).toBeLessThanOrEqual(wipByDay[0].middle[day]);
      expect(wipByDay[0].middle[day]).toBeLessThanOrEqual(wipByDay[0].high[day]);
    });
  });
});

describe('units shipped ahead by day', () => {
  // Ten builds of two units: the first out on day 100 in nine, on day 102 in one; the second never in two.
  const first = [100, 100, 100, 100, 100, 100, 100, 100, 100, 102],
    second = [101, 101, 101, 101, 101, 101, 101, 101, Infinity, Infinity];
  it('are the tenth, the half and the nine tenths of builds, with those due by then', () => {
    const rows = shippedByDay([first, second], [99, 101], 100);
    expect(rows.map(({ p10, p50, p90, due }) => [p10, p50, p90, due])).toEqual([
      // Due the day before the start: at once.
      [0, 1, 1, 1],
      // In one build of ten neither is out yet.
      [0, 2, 2, 2],
      [1, 2, 2, 2],
    ]);
    expect(rows.map(({ date }) => date)).toEqual(['1970-04-11', '1970-04-12', '1970-04-13']);
    expect(shippedByDay([first], [Infinity], 100)[0]?.due).toBeNull();
  });
  it('are late build by build, not order by order', () => {
    // Each unit is late in one build of ten, but never both in one.
    const other = [100, 102, ...Array<number>(8).fill(100)],
      late = (dueAt: number, ...units: readonly number[][]) =>
        lateOrders(units.map((shippedAt) => ({ dueAt, shippedAt })));
    expect(late(101, first, other)).toEqual({ half: 0, fourInFive: 0 });
    expect(late(100, second)).toEqual({ half: 1, fourInFive: 1 });
    expect(late(Infinity, second)).toBeNull();
  });
});
