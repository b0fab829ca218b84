import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { recoverySentence } from '../../../src/study/answer/recovery.js';
import type { Pair, Shipments } from '../../../src/study/programme/pairs.js';
import { type Recovery, recovery } from '../../../src/study/programme/recovery.js';
import { planned } from '../../../src/study/sample/planned.js';
import { minutes, programme, scenario, site, station, step } from '../../scenario/compile-scenario.js';

const DAY = 1440;
/** In UTC, from Monday 2027-03-01 on, without a quantity. */
const open = scenario({
  programme: programme({ zone: 'UTC', quantity: undefined, until: '2027-06-01' }),
  sites: { works: site({ booth: station() }, { zone: 'UTC' }) },
  route: [step('paint', 'booth', { work: minutes(10) })],
});
const plan = planned(open, compile(open));

const ships = (days: readonly number[], more: Partial<Shipments> = {}): Shipments => ({
  outcome: 'ended',
  endedAt: 92 * DAY,
  shippedOn: Int32Array.from(days),
  lastUnitDay: NaN,
  ...more,
});
/** An outage of days 2 and 3 since the start: the 3rd and 4th of March. */
const told = (pairs: readonly Pair[]): Recovery =>
  recovery(plan, pairs, { from: 2 * DAY, to: 4 * DAY }, null, 0.95);
const times = (n: number, pair: (r: number) => Pair): Pair[] => Array.from({ length: n }, (_, r) => pair(r));

describe('units behind', () => {
  it('are counted on the day that is worst on average: what chance moves to and fro is no loss', () => {
    // Half of the builds ship three units of day 5 on day 7 with the outage, half without it: each of the
    // first is three behind on days 5 and 6, each of the others three ahead.
    const early = ships([0, 0, 0, 0, 0, 3, 0, 0]),
      late = ships([0, 0, 0, 0, 0, 0, 0, 3]);
    const found = told(
      times(20, (r) => (r % 2 === 0 ? { with: late, without: early } : { with: early, without: late })),
    );
    expect(found.changed).toBe(20);
    expect(found.behindMost.units.mean).toBe(0);
    expect(found.behindMost.units.low).toBeLessThanOrEqual(0);
    expect(
      recoverySentence({ ...found, names: ['x'], from: '2027-03-03T00:00:00', to: '2027-03-05T00:00:00' }),
    ).toContain('That is not beyond chance.');
  });

  it('have the interval of the pairs: 1, 2, 3 behind are 2, give or take 4.303 / sqrt(3)', () => {
    // Student's t of 2 degrees of freedom at 95 %: 4.303 (tables).
    const found = told(
      [1, 2, 3].map((units) => ({ with: ships([0, 0, 3 - units]), without: ships([0, 0, 3]) })),
    );
    expect(found.behindMost).toMatchObject({ date: '2027-03-03', units: { mean: 2, n: 3 } });
    expect(found.behindMost.units.high).toBeCloseTo(2 + 4.303 / Math.sqrt(3), 3);
    expect(found.behindAtEnd.mean).toBe(2);
    expect(found.daysLater).toBeNull();
  });

  it('that lie before the outage are not its own', () => {
    const found = told([{ with: ships([0, 5, 0, 0, 1]), without: ships([5, 0, 0, 1, 0]) }]);
    expect(found.behindMost).toMatchObject({ date: '2027-03-04', units: { mean: 1 } });
  });
});

describe('when it is caught up', () => {
  // One a day without the outage. With it none on days 2 and 3, and from day 4 + r on two a day for two days
  // in replication r: level at the end of day 5 + r, that is 2 + r days after day 3, the outage's last.
  const pair = (r: number): Pair => {
    const days = Array.from({ length: 60 }, (_, day) =>
      day === 2 || day === 3 ? 0 : day === 4 + r || day === 5 + r ? 2 : 1,
    );
    return { with: ships(days), without: ships(new Array<number>(60).fill(1)) };
  };

  it('has P50 and P80 over replications, in days after the outage and as dates', () => {
    // Order statistics of 20 at 95 %: P50 ranks 6, 10, 15; P80 ranks 12, 16, 20 at most (binomial tables).
    const { caughtUp, caughtUpBy } = told(times(20, pair));
    expect(caughtUp).toMatchObject({ count: 20, n: 20 });
    expect(caughtUpBy[0]).toEqual({
      p: 0.5,
      days: 11,
      low: 7,
      high: 16,
      date: '2027-03-15',
      lowDate: '2027-03-11',
      highDate: '2027-03-20',
      why: null,
    });
    expect(caughtUpBy[1]).toMatchObject({ p: 0.8, days: 17, high: 21, why: null });
  });

  it('comes after all others in a replication that never does, which is said', () => {
    const never = { ...pair(0), with: ships([1, 1, 0, 0, ...new Array<number>(56).fill(1)]) };
    const { caughtUp, caughtUpBy } = told(times(20, (r) => (r < 5 ? never : pair(r))));
    expect(caughtUp).toMatchObject({ count: 15, n: 20 });
    // The fifteen others: 7 to 21 days; the tenth of them 16.
    expect(caughtUpBy[0]).toMatchObject({ days: 16, high: 21 });
    expect(caughtUpBy[1]).toMatchObject({
      days: null,
      date: null,
      why: '5 of 20 replications had not caught up when the run ended, and P80 is among those',
    });
  });

  it('is not while trucks come a day later than they would, six units every other day', () => {
    const every = (first: number): Shipments =>
      ships(
        Array.from({ length: 80 }, (_, day) => (day >= 2 && day % 2 === first ? 6 : 0)),
        { endedAt: 80 * DAY },
      );
    // Level each second day, and never over a week.
    const { behindMost, caughtUp } = told(times(2, () => ({ with: every(1), without: every(0) })));
    expect(behindMost.units.mean).toBe(6);
    expect(caughtUp.count).toBe(0);
  });

  it('is when the last unit is out at the latest, also where one more is scrapped', () => {
    const done = { outcome: 'finished', endedAt: 9 * DAY } as const;
    const { caughtUp, caughtUpBy } = told(
      times(6, () => ({
        with: ships([1, 1, 0, 0, 1, 1, 1], { ...done, lastUnitDay: 6.5 }),
        without: ships([1, 1, 1, 1, 1, 1], { ...done, lastUnitDay: 5.5 }),
      })),
    );
    expect(caughtUp.count).toBe(6);
    expect(caughtUpBy[0]).toMatchObject({ days: 3, date: '2027-03-07' });
  });

  it('is at once where a build is never behind', () => {
    const same = { with: ships([1, 1, 1, 1, 1]), without: ships([1, 1, 1, 1, 1]) };
    const found = told(times(6, () => same));
    expect(found).toMatchObject({ changed: 0, caughtUp: { count: 6 } });
    expect(found.caughtUpBy[0]).toMatchObject({ days: 0, date: '2027-03-04' });
  });
});
