import { describe, expect, it } from 'vitest';
import { binOf } from '../../../src/flow/accounts/bins.js';
import type { Observation } from '../../../src/measure/observe.js';
import { stableJson } from '../../../src/report/json.js';
import { PLACE_STATES } from '../../../src/study/sections/stations.js';
import {
  ARRIVAL_BANK,
  BAY,
  BOOTH,
  FERRY,
  FERRY_BANK,
  LEVELS,
  observation,
  PAINTERS,
  resultsOf,
  shipping,
  twoPlants,
  withEntries,
} from '../made-observation.js';

const weeks = [8, 14, 20, 20, 20, 8],
  utilisation = (entries: Record<number, number>) => ({ utilisation: withEntries(7, entries) });

describe('bottlenecks', () => {
  const results = resultsOf([
    shipping(weeks, {
      ...utilisation({ [BOOTH]: 0.9, [PAINTERS]: 0.8, [FERRY]: 0.1 }),
      activePeriod: withEntries(7, { [BOOTH]: 120, [PAINTERS]: 600 }),
    }),
    shipping(weeks, {
      ...utilisation({ [BOOTH]: 0.7, [PAINTERS]: 0.8, [FERRY]: 0.3 }),
      activePeriod: withEntries(7, { [BOOTH]: 240 }),
    }),
    shipping(weeks, utilisation({ [BOOTH]: 0.8, [PAINTERS]: 0.8 })),
    shipping(weeks),
  ]);

  it('are what has the highest utilisation, the earlier of two that are level, and nothing where nothing worked', () => {
    expect(results.runs.map((run) => run.bottleneck)).toEqual(['booth', 'painters', 'booth', null]);
    expect(results.bottlenecks.map(({ name, share }) => [name, share.count, share.n])).toEqual([
      ['booth', 2, 4],
      ['painters', 1, 4],
      ['ferry', 0, 4],
      ['bay', 0, 4],
      ['line', 0, 4],
      ['bench', 0, 4],
    ]);
    expect(results.bottlenecks[0]).toMatchObject({
      kind: 'station',
      site: 'coachworks',
      share: { share: 0.5 },
    });
    expect(results.bottlenecks[0].active.mean).toBeCloseTo(0.6, 12);
    expect(results.bottlenecks[2]).toMatchObject({ kind: 'lane', site: 'coachworks to final plant' });
  });

  it('have a mean active period over the replications that had one', () => {
    expect(results.bottlenecks[0].activePeriodHours).toMatchObject({ mean: 3, n: 2 });
    expect(results.bottlenecks[1].activePeriodHours).toMatchObject({ mean: 10, low: null, n: 1 });
    expect(results.bottlenecks[3].activePeriodHours).toMatchObject({ mean: 0, n: 0 });
  });
});

describe('inspections', () => {
  // In step order: inspect and test of the unit, gauge of the feeder.
  const counts = {
    inspected: Float64Array.of(50, 0, 10),
    firstVisits: Float64Array.of(40, 0, 10),
    firstPasses: Float64Array.of(30, 0, 5),
    sentBack: Float64Array.of(5, 0, 0),
    repaired: Float64Array.of(0, 0, 5),
    scrapped: Float64Array.of(1, 0, 0),
    escaped: Float64Array.of(2, 0, 0),
  };
  const withTest = {
    ...counts,
    inspected: Float64Array.of(50, 20, 0),
    firstVisits: Float64Array.of(40, 20, 0),
    firstPasses: Float64Array.of(20, 16, 0),
  };
  const results = resultsOf([
    shipping(weeks, { entered: 40, inspections: counts }),
    shipping(weeks, { entered: 40, inspections: withTest }),
  ]);

  it('have first-time-through of first visits, and the rest per 100 visits', () => {
    expect(results.inspections.map(({ name, site }) => [name, site])).toEqual([
      ['inspect', 'coachworks'],
      ['test', 'final plant'],
      ['gauge', 'final plant'],
    ]);
    const [inspect, test] = results.inspections;
    expect(inspect.ftt.mean).toBeCloseTo((30 / 40 + 20 / 40) / 2, 12);
    expect(inspect).toMatchObject({
      inspectedPerUnit: { mean: 1.25 },
      sentBackPer100: { mean: 10 },
      scrappedPer100: { mean: 2 },
      escapedPer100: { mean: 4 },
    });
    expect(test.ftt).toMatchObject({ mean: 0.8, n: 1 });
  });

  it("multiply to the rolled yield of the unit's route, by replication", () => {
    // 30/40 in the first; 20/40 * 16/20 in the second; the feeder's gauge is not of the unit's route.
    expect(results.rty!.mean).toBeCloseTo((0.75 + 0.4) / 2, 12);
    expect(resultsOf([shipping(weeks)])).toMatchObject({ rty: null, inspections: [] });
  });
});

describe('buffers and banks', () => {
  const levels = new Float64Array(6 * LEVELS);
  levels.set([0.5, 0.3, 0.2], BOOTH * LEVELS);
  levels.set([0.9, 0, 0.1], BAY * LEVELS);
  levels.set([0, 0, 0.4, 0.6], FERRY_BANK * LEVELS);
  const stationShares = observation(twoPlants, 1).stationShares.slice(),
    states = PLACE_STATES.length;
  stationShares[ARRIVAL_BANK * states + PLACE_STATES.indexOf('starved')] = 0.25;
  stationShares[ARRIVAL_BANK * states + PLACE_STATES.indexOf('blocked')] = 0.75;
  const results = resultsOf([
    shipping(weeks, {
      bufferLevels: levels,
      bufferMean: withEntries(6, { [BOOTH]: 0.7, [BAY]: 0.2, [FERRY_BANK]: 2.6 }),
      stationShares,
    }),
  ]);

  it('are those with spaces: ahead of stations, arrival banks, banks of lanes', () => {
    expect(results.buffers.map(({ name, kind, site, spaces }) => [name, kind, site, spaces])).toEqual([
      ['booth', 'buffer', 'coachworks', 2],
      ['bay', 'buffer', 'coachworks', null],
      ['ferry: arrival bank', 'bank', 'final plant', 1],
      ['ferry: bank', 'bank', 'coachworks', 3],
    ]);
  });

  it('are full at the level of their spaces', () => {
    expect(results.buffers.map(({ full }) => full?.mean ?? null)).toEqual([0.2, null, 0.75, 0.6]);
    expect(results.buffers.map(({ levels }) => levels)).toEqual([
      [0.5, 0.3, 0.2],
      [0.9, 0, 0.1, 0],
      [0.25, 0.75],
      [0, 0, 0.4, 0.6],
    ]);
    expect(results.buffers.map(({ mean }) => mean.mean)).toEqual([0.7, 0.2, 0.75, 2.6]);
  });

  it('leave the arrival bank out of stations', () => {
    expect(results.stations.map(({ name }) => name)).toEqual(['booth', 'bay', 'line', 'bench']);
  });
});

describe('series and WIP', () => {
  it('end with the last week in which something was planned or happened', () => {
    expect(resultsOf([shipping(weeks)]).series.labels).toEqual([
      '2027-W09',
      '2027-W10',
      '2027-W11',
      '2027-W12',
      '2027-W13',
      '2027-W14',
    ]);
    expect(resultsOf([shipping([90])]).series.labels).toHaveLength(5); // asked in five weeks
  });

  it('count a replication that has shipped all as empty, and leave out one that stands still', () => {
    const buckets = observation(twoPlants, 1).shippedIn.length,
      wipIn = new Float64Array(3 * buckets).fill(6, 0, 2),
      inFirst = {
        wipIn,
        minutesIn: withEntries(buckets, { 0: 10080, 1: 5040 }),
        endedAt: 15120,
        minutes: 15120,
      };
    const { wip } = resultsOf([
      shipping(weeks, { ...inFirst, wipByLocation: Float64Array.of(6, 0, 0) }),
      shipping(weeks, { ...inFirst, outcome: 'gridlock' }),
    ]);
    expect(wip.places.map(({ name, kind }) => [name, kind])).toEqual([
      ['coachworks', 'site'],
      ['final plant', 'site'],
      ['ferry', 'lane'],
    ]);
    // Half of the second week at 6, then none: 3; the one in gridlock has 6 for as long as it was seen.
    expect(wip.places[0].series.slice(0, 3).map(({ mean, n }) => [mean, n])).toEqual([
      [6, 2],
      [4.5, 2],
      [0, 1],
    ]);
  });

  it('ship per working day of the first site', () => {
    const { series, throughput } = resultsOf([shipping(weeks), shipping([10, 14, 20, 20, 20, 8])]);
    expect(series.shippedPerDay[0]).toMatchObject({ mean: 1.8 });
    expect(series.workingDays[0]).toBe(5);
    // 90 and 92 units in 30 working days, 1008 hours of the clock.
    expect(throughput.perDay.mean).toBeCloseTo(91 / 30, 10);
    expect(throughput.perHour.mean).toBeCloseTo(91 / 1008, 12);
  });
});

describe('lead time', () => {
  it('is pooled into classes of a round width that hold every unit', () => {
    const bins = new Int32Array(1200),
      first = binOf(1440);
    [1.5, 2.5, 2.5, 4.2].forEach((days) => {
      bins[binOf(days * 1440) - first]++;
    });
    const made = { leadFirstBin: first, leadBins: bins, leadLeast: 1.5 * 1440, leadGreatest: 4.2 * 1440 };
    const { edges, counts } = resultsOf([shipping(weeks, made), shipping(weeks, made)]).leadTime;
    expect(edges[1] - edges[0]).toBeCloseTo(0.1, 12); // 2.7 days / 40 = 0.0675, rounded up
    expect([edges[0], edges.at(-1)]).toEqual([1.5, 4.2]);
    expect(counts.reduce((sum, each) => sum + each, 0)).toBe(8);
    const within = (from: number, to: number): number =>
      counts.reduce(
        (sum, each, i) => (edges[i] >= from - 1e-9 && edges[i + 1] <= to + 1e-9 ? sum + each : sum),
        0,
      );
    expect([within(1.5, 1.6), within(2.4, 2.6), within(4.1, 4.2)]).toEqual([2, 4, 2]);
  });

  it('has no class when nothing was shipped, and says with n that there is no mean', () => {
    const results = resultsOf([(replication) => observation(twoPlants, replication)]);
    expect(results.leadTime).toMatchObject({ edges: [], counts: [], mean: { mean: 0, n: 0 } });
    expect(results.answer.sentence).toContain('no unit was shipped');
    expect(() => stableJson(results)).not.toThrow();
  });
});

describe('the last unit', () => {
  /** The last of 90 is shipped at noon of a day after 1 April. */
  const lastOn = (day: number, outcome: 'finished' | 'ended' = 'finished') =>
    shipping(weeks, { outcome, shippedAt: new Float64Array(90).fill((31 + day) * 1440 - 720) });

  it('has the dates of the order statistics: of 20, the median is the 10th and lies within the 6th to 15th', () => {
    const { lastUnit, runs } = resultsOf(Array.from({ length: 20 }, (_, i) => lastOn(20 - i)));
    expect(lastUnit[0]).toEqual({
      p: 0.5,
      date: '2027-04-10',
      low: '2027-04-06',
      high: '2027-04-15',
      why: null,
    });
    expect(lastUnit[1].date).toBe('2027-04-16');
    expect(lastUnit[2]).toEqual({
      p: 0.95,
      date: null,
      low: null,
      high: null,
      why: 'a 95 % interval for P95 needs 72 replications, there are 20',
    });
    expect(runs[0].lastShipped).toBe('2027-04-20');
  });

  it('gives the ship date and the lead time of every unit, with the same order statistics', () => {
    // Unit 1 enters at minute 0 and is shipped at the end of day i in replication i, in 1 of 20 never; the
    // others are never shipped.
    const shippedOn =
      (day: number) =>
      (replication: number): Observation => {
        const empty = observation(twoPlants, replication),
          shippedAt = empty.shippedAt.slice(),
          enteredAt = empty.enteredAt.slice();
        enteredAt[0] = 0;
        if (day < 20) shippedAt[0] = day * 1440 - 60;
        return { ...empty, shippedAt, enteredAt };
      };
    const { units } = resultsOf(Array.from({ length: 20 }, (_, i) => shippedOn(i + 1)));
    expect(units).toHaveLength(90);
    // Ranks of 20 values by the binomial tables: 10 (6 to 15) for P50, 16 for P80; day i is March i, 2027.
    // P95 needs 72.
    expect(units[0].shipped.map(({ date, low, high }) => [date, low, high])).toEqual([
      ['2027-03-10', '2027-03-06', '2027-03-15'],
      ['2027-03-16', '2027-03-12', null],
      [null, null, null],
    ]);
    expect(units[0].leadDays).toMatchObject({ n: 19 });
    expect(units[0].leadDays.mean).toBeCloseTo(10 - 60 / 1440, 9);
    expect(units[1].shipped[0]).toEqual({ p: 0.5, date: null, low: null, high: null });
  });

  it('is later than any date in a replication that was not finished', () => {
    const { lastUnit, findings } = resultsOf(
      Array.from({ length: 20 }, (_, i) => lastOn(i + 1, i < 14 ? 'finished' : 'ended')),
    );
    expect(lastUnit[0]).toEqual({
      p: 0.5,
      date: '2027-04-10',
      low: '2027-04-06',
      high: null,
      why: '6 of 20 replications were not finished, so the interval has no end',
    });
    expect(lastUnit[1]).toEqual({
      p: 0.8,
      date: null,
      low: null,
      high: null,
      why: '6 of 20 replications were not finished, and P80 is among those',
    });
    expect(findings.find(({ kind }) => kind === 'calendar end')?.replications).toBe(6);
  });
});

describe('findings', () => {
  it('name the step and the defect of a rework loop that came to its limit', () => {
    const { findings } = resultsOf([
      shipping(weeks, { limitReached: Float64Array.of(3, 0, 0) }),
      shipping(weeks, { limitReached: Float64Array.of(1, 1, 0) }),
    ]);
    expect(findings.filter(({ kind }) => kind === 'loop limit')).toEqual([
      {
        kind: 'loop limit',
        replications: 2,
        text: 'inspect found runs on units that it had already sent back 2 times for it, the most allowed: 2 a replication, passed on as they were',
      },
      {
        kind: 'loop limit',
        replications: 1,
        text: 'test found a failure on units that it had already sent back 1 time for it, the most allowed: 0.5 a replication, scrapped',
      },
    ]);
  });
});
