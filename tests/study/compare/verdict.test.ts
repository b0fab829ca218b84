import { describe, expect, it } from 'vitest';
import { compareSentence } from '../../../src/study/compare/sentence.js';
import { compared, zoneOf } from '../../../src/study/compare/verdict.js';
import { sameZone, zoneShare } from '../../../src/study/compare/zones.js';

const LEAD = { id: 'lead mean', unit: 'days', better: 'less' } as const,
  RATE = { id: 'throughput', unit: 'units a working day', better: 'more' } as const;
/** Three pairs whose differences have this mean and a variance of 1. */
const around = (mean: number, base: number): [number[], number[]] => [
  [base, base, base],
  [base + mean - 1, base + mean, base + mean + 1],
];
/** t(2; 0.975) = 4.302653 (tables of Student's t): the half-width of such three pairs. */
const HALF = 4.302653 / Math.sqrt(3);
const verdict = (measure: typeof LEAD | typeof RATE, base: number[], changed: number[], share: number) =>
  compared({ ...measure, zone: zoneOf(base, share) }, base, changed, 0.95);

describe('the verdict on paired values', () => {
  it('has the paired t interval, and is not settled where that reaches from one side of the zone to the other', () => {
    // Differences 1, -1, 2, 0: mean 0.5, variance 5/3, t(3; 0.975) = 3.182446 (tables of Student's t):
    // half-width 3.182446 sqrt(5/12) = 2.054264. The base's mean is 11.5, so 1 % are 0.115.
    const found = verdict(LEAD, [10, 12, 11, 13], [11, 11, 13, 13], 0.01);
    expect(found.difference.mean).toBeCloseTo(0.5, 12);
    expect(found.difference.low).toBeCloseTo(0.5 - 2.054264, 5);
    expect(found.difference.high).toBeCloseTo(0.5 + 2.054264, 5);
    expect([found.verdict, found.words]).toEqual(['not settled', 'not settled']);
  });

  // The interval is the mean given here, 2.4841 either way. The base has 100, so the zone is its share in per cent.
  it.each([
    ['beyond the zone by the whole interval', 5, 0.02, 'better', 'worse'],
    ['above 0, and beyond the zone in part', 3, 0.02, 'at least a little better', 'at least a little worse'],
    // 0.0159 to 4.98.
    ['above 0 by a hair', 2.5, 0.04, 'at least a little better', 'at least a little worse'],
    ['within the zone, 0 in it', 0.1, 0.03, 'no difference that matters', 'no difference that matters'],
    // 0.516 to 5.484: seen, but no matter.
    ['within the zone, all on one side', 3, 0.06, 'no difference that matters', 'no difference that matters'],
    ['across 0 and one edge', 1, 0.03, 'not settled', 'not settled'],
    ['across both edges', 0, 0.02, 'not settled', 'not settled'],
    ['across 0 with a zone of nothing', 1, 0, 'not settled', 'not settled'],
    ['above 0 with a zone of nothing', 3, 0, 'better', 'worse'],
  ])('of an interval %s', (_, mean, share, upwards, downwards) => {
    const up = verdict(RATE, ...around(mean, 100), share);
    expect(up.difference.low).toBeCloseTo(mean - HALF, 5);
    expect(up.difference.high).toBeCloseTo(mean + HALF, 5);
    expect(up.verdict).toBe(upwards);
    expect(verdict(RATE, ...around(-mean, 100), share).verdict).toBe(downwards);
    // Less is better: the same the other way round.
    expect(verdict(LEAD, ...around(mean, 100), share).verdict).toBe(downwards);
    expect(verdict(LEAD, ...around(-mean, 100), share).verdict).toBe(upwards);
  });

  it('of values without chance is that of the number itself, the edge being within', () => {
    const constant = (base: number, changed: number): string =>
      verdict(RATE, [base, base, base], [changed, changed, changed], 0.01).verdict;
    expect(constant(4, 4.03)).toBe('no difference that matters');
    expect(constant(4, 4.04)).toBe('no difference that matters');
    expect(constant(4, 4.05)).toBe('better');
    expect(constant(4, 3.96)).toBe('no difference that matters');
    expect(constant(4, 3.95)).toBe('worse');
    // 1.111 - 1.1 is a hair above 0.011 in binary.
    expect(constant(1.1, 1.111)).toBe('no difference that matters');
    expect(verdict(RATE, [4, 5], [4, 5], 0.01)).toMatchObject({
      verdict: 'no difference that matters',
      words: 'the same in every replication',
    });
  });

  it('has no zone where the base has nothing: any difference matters', () => {
    const zero = [0, 0, 0];
    expect(zoneOf(zero, 0.01)).toEqual({ share: 0.01, amount: 0 });
    expect(verdict(LEAD, zero, [0.001, 0.001, 0.001], 0.01)).toMatchObject({
      verdict: 'worse',
      relative: null,
    });
    expect(verdict(LEAD, zero, zero, 0.01)).toMatchObject({
      verdict: 'no difference that matters',
      words: 'the same in every replication',
    });
    // 0, 0, 0.003: mean 0.001, across 0.
    expect(verdict(LEAD, zero, [0, 0, 0.003], 0.01).verdict).toBe('not settled');
  });

  it('is not settled with one pair, whatever the others', () => {
    expect(verdict(LEAD, [10, NaN], [8, 9], 0.01)).toMatchObject({
      verdict: 'not settled',
      words: 'not settled, 1 replication in which both have a value',
    });
    expect(verdict(LEAD, [NaN, NaN], [8, 9], 0.01).words).toBe(
      'not settled, no replication in which both have a value',
    );
  });
});

describe('zones', () => {
  it('are shares by measure, mean and P90 of the lead time together', () => {
    const zones = { ...sameZone(0.01), 'lead-time': 0.05 };
    expect(
      (['throughput', 'lead mean', 'lead p90', 'wip', 'last unit', 'cost'] as const).map((id) =>
        zoneShare(zones, id),
      ),
    ).toEqual([0.01, 0.05, 0.05, 0.01, 0.01, 0.01]);
  });
});

describe('the answer in words', () => {
  const measures = [RATE, LEAD].map((each) => ({ ...each, name: each.id, zone: zoneOf([100], 0.02) }));
  const variant = {
    note: null,
    changes: [],
    digest: '',
    standstill: null,
    askedPerDay: null,
    gridlocks: 0,
    unfinished: 0,
    shippedPerDay: [],
    shippedOverLoads: null,
    wip: [],
    lastUnit: [],
  };
  const value = { mean: 100, low: 99, high: 101, level: 0.95, n: 3 };
  /** What-ifs by what they change in the rate; the lead time falls by as much. */
  const said = (whatIfs: Readonly<Record<string, [number[], number[]]>>): string =>
    compareSentence({
      measures,
      ...{ level: 0.95, differenceLevel: 0.95 },
      base: { ...variant, name: 'base', values: [{ measure: 'throughput', value }] },
      whatIfs: Object.entries(whatIfs).map(([name, [base, changed]]) => ({
        ...variant,
        name,
        compared: measures.map((measure) => compared(measure, base, changed, 0.95)),
      })),
    });

  it('names what-ifs by verdict with their sizes, those that do not matter by name alone, and the zone', () => {
    const answer = said({
      booth: around(5, 100),
      painter: around(3, 100),
      store: around(-5, 100),
      cart: around(1, 100),
      paint: [
        [100, 101],
        [100, 101],
      ],
    });
    expect(answer).toBe(
      'The base ships 100.0 units a working day (95 % CI 99.0 to 101.0). ' +
        'Ships more: booth by +5 (3 to 7). ' +
        'Ships at least a little more: painter by +3 (1 to 5). ' +
        'Ships less: store by -5 (-7 to -3). ' +
        'No difference that matters: paint. ' +
        'Not settled: cart by +1 (-1 to 3). ' +
        'Lead time shorter: store by -5 (-7 to -3). ' +
        'Lead time longer: booth by +5 (3 to 7). ' +
        'Lead time at least a little longer: painter by +3 (1 to 5). ' +
        'Lead time without a difference that matters: paint. ' +
        'Lead time not settled: cart by +1 (-1 to 3). ' +
        'A difference matters beyond 2 units a working day (2 %) and 2 days of lead time (2 %). ' +
        'In brackets: 95 % CI, so that all of it holds together with 95 %.',
    );
  });

  it('says nothing of differences after one replication', () => {
    expect(said({ booth: [[100], [105]] })).toMatch(/One replication says nothing of differences\.$/);
  });
});
