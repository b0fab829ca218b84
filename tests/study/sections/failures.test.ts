import { describe, expect, it } from 'vitest';
import { DOWN, OFF_SHIFT, STATE_COUNT } from '../../../src/flow/floor/states.js';
import type { Observation } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import { minutes, programme, scenario, site, station, step } from '../../scenario/compile-scenario.js';
import { observation } from '../made-observation.js';
import { summarise } from '../summarise.js';

const DAY = 1440;
/**
 * Always open, in UTC; the booth down from the 3rd to the 4th of May: from minute 63 * 1440 to 65 * 1440 of a
 * programme that begins on 1 March.
 */
const down = scenario({
  programme: programme({ zone: 'UTC', quantity: 40, until: '2027-06-01' }),
  sites: {
    works: site(
      {
        booth: station({
          failures: [{ every: minutes(100), by: 'operating time', repair: minutes(5), hours: undefined }],
        }),
        bay: station(),
      },
      { zone: 'UTC' },
    ),
  },
  outages: [
    {
      stations: ['booth'],
      site: undefined,
      lanes: [],
      from: { day: '2027-05-03', minute: undefined },
      to: { day: '2027-05-04', minute: undefined },
      note: undefined,
    },
  ],
  route: [step('paint', 'booth', { work: minutes(10) }), step('fit', 'bay', { work: minutes(5) })],
});
const END = 65 * DAY,
  {
    outages: { watchDays },
  } = compile(down);

function seen(replication: number, recoveredAt: number, more: Partial<Observation> = {}): Observation {
  const base = observation(down, replication),
    shares = base.stationShares.slice(),
    openByDay = new Float64Array(watchDays).fill(4);
  shares.set([0.2, 0, 0, 0, 0, 0, 0, 0.3, 0.1, 0.4], 0);
  return {
    ...base,
    outcome: 'ended',
    stationShares: shares,
    failures: {
      count: Float64Array.of(6, 0),
      repairs: Float64Array.of(5, 0),
      minutes: Float64Array.of(600, 0),
      longest: Float64Array.of(240, 0),
    },
    outages: { openUnits: Float64Array.of(4), recoveredAt: Float64Array.of(recoveredAt), openByDay },
    ...more,
  };
}
const resultsOf = (observations: Observation[]) =>
  summarise({
    scenario: down,
    model: compile(down),
    observations,
    file: 'down.yaml',
    seed: 'made',
    level: 0.95,
  });

describe('failures', () => {
  it('are those of stations that fail: number, hours of a repair, the longest, and the share of time on shift in which a place is not down', () => {
    expect([DOWN, OFF_SHIFT, STATE_COUNT]).toEqual([8, 9, 10]);
    const { failures } = resultsOf([seen(1, END)]);
    expect(failures.map(({ name, site, places }) => [name, site, places])).toEqual([['booth', 'works', 1]]);
    expect(failures[0]).toMatchObject({
      failures: { mean: 6 },
      downHours: { mean: 2 },
      longestDownHours: { mean: 4 },
    });
    expect(failures[0].availability.mean).toBeCloseTo(1 - 0.1 / 0.6, 12);
  });
});

describe('time to recover', () => {
  // 20 replications recover 1, 2, .. 20 days after the end; order statistics for P50 of 20 at 95 %: ranks 6
  // and 15 (binomial tables); P80: 12 and 20 at most.
  const all = Array.from({ length: 20 }, (_, i) => seen(i + 1, END + (i + 1) * DAY));

  it('has P50 and P80 over replications in days from the end of the outage', () => {
    const [outage] = resultsOf(all).outages;
    expect(outage).toMatchObject({
      name: 'booth',
      stations: ['booth'],
      lanes: [],
      from: '2027-05-03T00:00:00',
      to: '2027-05-05T00:00:00',
      days: 2,
      openUnits: { mean: 4 },
      recovered: { share: 1, n: 20 },
    });
    expect(outage.recoveryDays[0]).toEqual({ p: 0.5, days: 10, low: 6, high: 15, why: null });
    expect(outage.recoveryDays[1]).toMatchObject({ p: 0.8, days: 16, why: null });
  });

  it('counts those that never recovered as later than all others, and says so', () => {
    const [outage] = resultsOf(
      all.map((each, i) =>
        i < 5 ? { ...each, outages: { ...each.outages, recoveredAt: Float64Array.of(NaN) } } : each,
      ),
    ).outages;
    expect(outage.recovered).toMatchObject({ count: 15, n: 20 });
    expect(outage.recoveryDays[0]).toMatchObject({ days: 15, high: 20 });
    expect(outage.recoveryDays[1]).toEqual({
      p: 0.8,
      days: null,
      low: null,
      high: null,
      why: '5 of 20 replications had not recovered when the run ended, and P80 is among those',
    });
  });

  it('leaves out replications in which the outage did not begin', () => {
    const never = seen(2, NaN, {
      outages: {
        openUnits: Float64Array.of(NaN),
        recoveredAt: Float64Array.of(NaN),
        openByDay: new Float64Array(watchDays).fill(NaN),
      },
    });
    expect(resultsOf([seen(1, END), never]).outages[0].recovered).toMatchObject({ count: 1, n: 1 });
    expect(resultsOf([never]).outages[0]).toMatchObject({
      recovered: null,
      byDay: null,
      openUnits: { n: 0 },
    });
  });

  it('goes with open units by day, from two weeks before to a week after P80, and nothing open once a run is finished', () => {
    const finished = all.map((each, i) =>
      i > 0
        ? each
        : {
            ...each,
            outcome: 'finished' as const,
            outages: {
              ...each.outages,
              openByDay: each.outages.openByDay.map((units, day) => (day < 17 ? units + 3 : NaN)),
            },
          },
    );
    const { byDay } = resultsOf(finished).outages[0];
    // 14 days before, 2 of the outage, 16 + 7 after it, and the last one's end.
    expect(byDay!.days).toEqual(Array.from({ length: 14 + 2 + 16 + 7 + 1 }, (_, i) => i - 14));
    expect([byDay!.dates[0], byDay!.dates.at(-1)]).toEqual(['2027-04-19', '2027-05-28']);
    expect([byDay!.mean[0], byDay!.mean[17], byDay!.p10[17], byDay!.p90[0]]).toEqual([4.15, 3.8, 4, 4]);
  });
});
