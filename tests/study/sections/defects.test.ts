import { describe, expect, it } from 'vitest';
import { binOf } from '../../../src/flow/accounts/bins.js';
import type { Observation } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import {
  back,
  carry,
  chance,
  dayShift,
  feeder,
  minutes,
  programme,
  repair,
  scenario,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';
import { observation, resultsOf, withEntries } from '../made-observation.js';

/**
 * Invented: an axle with a crack from plant one, measured there and again in plant two, with a hold at the
 * end.
 */
const twoSites = scenario({
  calendars: { days: dayShift },
  sites: {
    one: site(
      { bench: station(), line: station(), gate: station() },
      { calendar: 'days', crews: { fitters: { headcount: 2, calendar: undefined } } },
    ),
    two: site({ stand: station(), 'hold area': station() }, { calendar: 'days' }),
  },
  lanes: {
    ferry: {
      from: 'one',
      to: 'two',
      trucks: 1,
      capacity: 1,
      load: minutes(0),
      drive: minutes(60),
      unload: minutes(0),
      return: minutes(60),
      leaves: { kind: 'full' },
      hours: undefined,
      bank: undefined,
      arrivalBank: undefined,
      docks: { from: undefined, to: undefined },
    },
  },
  defects: { crack: { note: undefined }, gap: { note: undefined }, never: { note: undefined } },
  feeders: {
    axles: feeder(
      [
        step('weld', 'bench', { work: minutes(5), creates: { crack: chance(0.1) } }),
        step('gauge', 'bench', { finds: { crack: repair(0.5, minutes(1)) } }),
      ],
      { target: 2 },
    ),
  },
  route: [
    step('fit', 'line', {
      work: minutes(10),
      parts: { axles: 1 },
      crew: { fitters: 1 },
      creates: { gap: chance(0.2), never: chance(0) },
    }),
    step('look', 'gate', {
      work: minutes(5),
      finds: {
        gap: back(0.5, 'fit', { limit: 2 }),
        crack: repair(0.5, minutes(9)),
        never: repair(1, minutes(1)),
      },
    }),
    { kind: 'lane', lane: 'ferry', when: {} },
    step('look again', 'stand', {
      work: minutes(5),
      finds: { crack: repair(0.5, minutes(9)), gap: carry(0.5, minutes(30)) },
      comparesWith: { step: 'look', differs: minutes(40) },
    }),
    step('hold', 'hold area', { hold: { mend: minutes(10) } }),
  ],
  programme: programme({ quantity: 90 }),
});

// Slots: gap, never (fit), crack (weld). Finds in step order: look gap, look crack, look never, look again
// crack, look again gap, gauge crack.
const GAP = 0,
  CRACK = 2;
const seen =
  (more: Partial<Observation['quality']>, rest: Partial<Observation> = {}) =>
  (replication: number): Observation => {
    const base = observation(twoSites, replication, { shipped: 80, ...rest });
    return { ...base, quality: { ...base.quality, ...more } };
  };
const played = seen(
  {
    made: withEntries(3, { [GAP]: 20, [CRACK]: 10 }),
    shippedUnfound: withEntries(3, { [GAP]: 2, [CRACK]: 1 }),
    shippedNoted: withEntries(3, { [GAP]: 4 }),
    found: Float64Array.of(10, 2, 0, 3, 8, 4),
    repairMinutes: Float64Array.of(0, 30, 0, 60, 240, 12),
    cameToHold: Float64Array.of(80),
    held: Float64Array.of(20),
    mended: Float64Array.of(24),
    inHold: Float64Array.of(0.5),
    holdMean: Float64Array.of(720),
    holdTimes: [{ first: binOf(2880), bins: Int32Array.of(20), least: 2880, greatest: 2880 }],
    compared: withEntries(12, { 4: 60, 5: 5, 6: 7, 7: 8 }),
    differMinutes: Float64Array.of(0, 480, 0),
  },
  { reworkMinutes: Float64Array.of(600) },
);

describe('results of quality', () => {
  const { steps, slots } = compile(twoSites),
    results = resultsOf([played, played], twoSites);

  it('are reckoned from the model as the test takes it', () => {
    expect(slots.names).toEqual(['gap from fit', 'never from fit', 'crack from weld']);
    expect([...steps.findSlot]).toEqual([0, 2, 1, 2, 0, 2]);
  });

  it('charge items to where they are found', () => {
    const [gap, crack] = results.defects;
    expect(results.defects).toHaveLength(2);
    expect(gap).toMatchObject({
      kind: 'gap',
      madeAt: 'fit',
      made: { mean: 20 },
      shippedWith: { mean: 0.1 },
      shippedNoted: { mean: 0.2 },
      repairHours: { mean: 4 },
    });
    expect(
      gap.foundAt.map(({ step: name, then, share, repairHours }) => [
        name,
        then,
        share.mean,
        repairHours.mean,
      ]),
    ).toEqual([
      ['look', 'sent back', 0.5, 0],
      ['look again', 'carried', 0.4, 4],
    ]);
    expect(crack.foundAt.map(({ step: name, share }) => [name, share.mean])).toEqual([
      ['look', 0.2],
      ['look again', 0.3],
      ['gauge', 0.4],
    ]);
    expect(crack.repairHours.mean).toBeCloseTo(102 / 60, 12);
  });

  it('tell escapes by site, for each unit shipped', () => {
    // Made in one 30; found there 10 + 2 + 4, in two 3 + 8, shipped 3; of 80.
    expect(results.escapes).toHaveLength(1);
    const {
      site: name,
      madePerUnit,
      foundHerePerUnit,
      foundElsewherePerUnit,
      shippedWithPerUnit,
    } = results.escapes[0];
    expect([
      name,
      madePerUnit.mean,
      foundHerePerUnit.mean,
      foundElsewherePerUnit.mean,
      shippedWithPerUnit.mean,
    ]).toEqual(['one', 30 / 80, 16 / 80, 11 / 80, 3 / 80]);
  });

  it('tell holds, in days of 24 hours', () => {
    expect(results.holds).toMatchObject([
      {
        name: 'hold',
        site: 'two',
        heldShare: { mean: 0.25 },
        units: { mean: 0.5 },
        daysMean: { mean: 0.5 },
        daysP95: { mean: 2 },
        mended: { mean: 24 },
      },
    ]);
  });

  it('compare two measurements, with the interval of the agreement', () => {
    const other = seen({ compared: withEntries(12, { 4: 50, 7: 10, 5: 10, 6: 10 }) });
    const [row] = resultsOf([played, other], twoSites).comparisons;
    expect(row).toMatchObject({
      first: 'look',
      second: 'look again',
      units: { mean: 80 },
      extraHours: { mean: 4 },
    });
    // 68/80 and 60/80: mean 0.8, t(1) = 12.706 times 0.05; cut to 1.
    expect([row.agreement.mean, row.agreement.low, row.agreement.high]).toEqual([
      expect.closeTo(0.8, 12),
      expect.closeTo(0.8 - 12.706 * 0.05, 3),
      1,
    ]);
    expect(row.goodBad.mean).toBeCloseTo((5 / 80 + 10 / 80) / 2, 12);
  });

  it('tell work done again in person-hours', () => {
    expect(results.rework).toMatchObject([{ crew: 'fitters', site: 'one', hours: { mean: 10 } }]);
  });

  it('name what was shipped with noted items as a finding', () => {
    expect(results.findings.filter(({ kind }) => kind === 'shipped open')).toEqual([
      {
        kind: 'shipped open',
        replications: 2,
        text: 'units were shipped with items that had been found and left open: 4 a replication (gap); a step with hold after the find would keep them back',
      },
    ]);
    expect(resultsOf([seen({})], twoSites).findings.map(({ kind }) => kind)).not.toContain('shipped open');
  });
});
