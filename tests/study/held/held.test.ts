import { describe, expect, it } from 'vitest';
import { canShip, replicationsToShow, shippable, shippedIn } from '../../../src/study/held/evidence.js';
import { type Holding, holdingOf, holdingText } from '../../../src/study/held/holding.js';
import { type AskedIn, type Kept, keptUpBy } from '../../../src/study/held/keep-up.js';
import { proportion } from '../../../src/study/statistics/proportion.js';
import { sum } from '../../../src/study/statistics/sums.js';

const A_DAY = { per: 'day', workingDays: 1 } as const;
const build = (shipped: number, outcome: Kept['outcome'] = 'ended'): Kept => ({
  outcome,
  shippedIn: Int32Array.of(shipped),
  shippedOn: new Int32Array(0),
});
const times = (n: number, one: Kept): Kept[] => Array.from({ length: n }, () => one);
const weeks = (upset = 0, isWhole = true): AskedIn => ({
  asked: 60,
  counting: { upset, isWhole, shipped: ({ shippedIn }) => sum(shippedIn) },
});

describe('builds that keep up', () => {
  it('miss no more than 2 % of what is asked, or a unit, or one and what loads make of the count', () => {
    // Of 60 a unit is 1.7 %.
    expect(keptUpBy(times(10, build(59)), weeks(), 0.5, 0.95).keptUp.count).toBe(10);
    expect(keptUpBy(times(10, build(58)), weeks(), 0.5, 0.95).keptUp.count).toBe(0);
    expect(keptUpBy(times(10, build(58)), weeks(1), 0.5, 0.95).keptUp.count).toBe(10);
  });

  it('are not those that stand still, whatever they had shipped', () => {
    expect(
      keptUpBy([...times(9, build(60)), build(60, 'gridlock')], weeks(), 0.5, 0.95).keptUp,
    ).toMatchObject({ count: 9, n: 10 });
  });

  it('are enough where the lower end of the Wilson interval is as high as is asked', () => {
    // Of all of n the lower end is n / (n + 1.96^2): 0.722 of 10 and 0.839 of 20.
    expect(keptUpBy(times(10, build(60)), weeks(), 0.8, 0.95).enough).toBe('open');
    expect(keptUpBy(times(20, build(60)), weeks(), 0.8, 0.95).enough).toBe('yes');
    // Of half of 20 it reaches from 0.30 to 0.70.
    const half = [...times(10, build(60)), ...times(10, build(50))];
    expect(keptUpBy(half, weeks(), 0.8, 0.95).enough).toBe('no');
    expect(keptUpBy(half, weeks(), 0.5, 0.95).enough).toBe('open');
  });

  it('may seem too many where two cycles of the loads do not go into the weeks, never too few', () => {
    expect(keptUpBy(times(20, build(60)), weeks(3, false), 0.5, 0.95).enough).toBe('open');
    expect(keptUpBy(times(20, build(50)), weeks(3, false), 0.5, 0.95).enough).toBe('no');
  });

  it('do not make a rate that holds hang on one that stands still in a thousand', () => {
    const { enough } = keptUpBy([...times(999, build(60)), build(0, 'gridlock')], weeks(), 0.95, 0.95);
    expect(enough).toBe('yes');
  });
});

describe('what can be shipped when more is asked', () => {
  it('has one-sided bounds of 99.9 % by Student', () => {
    // 8, 10, 12: mean 10, standard error 2 / sqrt(3); t of 0.999 with 2 degrees of freedom is 22.327 (tables
    // of Student's t, from memory).
    const { low, high, error } = shippedIn([8, 10, 12], 1);
    expect(error).toBeCloseTo(2 / Math.sqrt(3), 12);
    expect(low).toBeCloseTo(10 - (22.327 * 2) / Math.sqrt(3), 2);
    expect(high).toBeCloseTo(10 + (22.327 * 2) / Math.sqrt(3), 2);
    expect(shippable([{ ...shippedIn([8, 10, 12], 1) }], 5).least).toBeCloseTo(low / 5, 12);
  });

  it('gives whole units in favour of a rate up to arithmetic, and against it beyond', () => {
    const always = shippedIn([60, 60, 60], 1);
    expect(always).toMatchObject({ low: 60, high: 60, slack: 1 });
    expect(canShip(60.9, [always], true)).toBe('yes');
    expect(canShip(61.1, [always], true)).toBe('no');
    expect(canShip(59, [always], false)).toBe('yes');
    expect(canShip(59.1, [always], false)).toBe('no');
  });

  it('takes no whole units into account where chance evens them out', () => {
    expect(shippedIn([58, 60, 62], 1).slack).toBe(0);
  });

  it('is open where the bounds lie on both sides, and where nothing is known', () => {
    const some = shippedIn([55, 60, 65, 60], 1);
    expect(canShip(60, [some], true)).toBe('open');
    expect(canShip(60, [], true)).toBe('open');
    expect(canShip(60, [shippedIn([60], 1)], true)).toBe('open');
    // One rate above that shows enough is enough: a line may choke when far too much is asked.
    expect(canShip(60, [shippedIn([40, 41, 40], 1), shippedIn([61, 61, 61], 1)], true)).toBe('yes');
    expect(canShip(60, [shippedIn([40, 40, 40], 1), shippedIn([59, 59, 59], 0)], true)).toBe('no');
  });

  it('would be shown by as many replications as bring the lower end to what is asked', () => {
    const values = [55, 60, 65, 60, 62, 58],
      now = shippedIn(values, 0),
      takes = replicationsToShow(58, now, true);
    // Mean 60; 2 above what is asked.
    expect(takes).toBe(Math.ceil(values.length * ((now.mean - now.low) / 2) ** 2));
    expect(replicationsToShow(61, now, true)).toBe(Infinity);
  });
});

describe('a rate', () => {
  const holding = (count: number, enough: Holding['enough'], canShip: Holding['canShip']): Holding => ({
    keptUp: proportion(count, 30, 0.95),
    enough,
    isWhole: true,
    canShip,
  });
  const shipping = (enough: 'yes' | 'no' | 'open') => ({ enough, least: 3.41, most: 3.46 });

  it('holds only if enough builds keep up and can ship as much, and says in how many', () => {
    const told = (one: Holding): readonly [string, string] => [holdingOf(one), holdingText(one, A_DAY)];
    expect(told(holding(29, 'yes', shipping('yes')))).toEqual(['holds', '29 of 30 builds keep up']);
    expect(told(holding(29, 'yes', shipping('no')))).toEqual([
      'does not hold',
      '29 of 30 builds keep up, but in the long run 3.46 a day can be shipped at most',
    ]);
    expect(told(holding(29, 'yes', shipping('open')))).toEqual([
      'not settled',
      '29 of 30 builds keep up, but what can be shipped in the long run is known only to lie from 3.41 to 3.46 a day',
    ]);
    expect(told(holding(3, 'no', null))).toEqual(['does not hold', 'only 3 of 30 builds keep up']);
    expect(told(holding(0, 'no', null))).toEqual(['does not hold', 'none of 30 builds keeps up']);
    expect(told(holding(16, 'open', null))).toEqual([
      'not settled',
      '16 of 30 builds keep up (95 % CI 36 to 70 %), too few builds to tell',
    ]);
    expect(told({ ...holding(30, 'open', null), isWhole: false })).toEqual([
      'not settled',
      '30 of 30 builds keep up, but loads come too seldom for these weeks',
    ]);
  });
});
