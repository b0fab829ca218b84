import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { type Counting, countingOf } from '../../../src/study/loads/counting.js';
import { arithmeticOf, loadsOf } from '../../../src/study/loads/loads.js';
import { overLoads } from '../../../src/study/loads/over-loads.js';
import { planned } from '../../../src/study/sample/planned.js';

const WEEK = 7 * 1440;

/** Trucks of so many, one unit a working day; 2027-03-01 is a Monday. Every number is invented. */
function build(capacity: number, programme = 'until: 2027-12-27, rate: { per day: 1 }') {
  const { scenario, problems } = readScenario(
    `
scenario: a truck
programme: { start: 2027-03-01, zone: UTC, ${programme} }
calendars: { days: { hours: ["07:00-15:00"], holidays: [2027-06-16] } }
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: 9 } } }
  b: { zone: UTC, calendar: days, stations: { two: { buffer: unlimited } } }
lanes: { road: { from: a, to: b, trucks: 9, capacity: ${capacity}, drive: 1 h } }
route: [{ step: make, at: one, work: 1 h }, { lane: road }, { step: end, at: two, work: 1 h }]
`,
    'truck.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return planned(scenario, compile(scenario));
}
const plan = build(7);

/** Shipments of one load in so many working days, the first on working day `begin`; a week has five. */
function shipping(units: number, cycle: number, begin: number) {
  const shippedOn = new Int32Array(301),
    shippedIn = new Int32Array(43);
  for (let day = begin; day < 215; day += cycle) {
    const at = 7 * Math.floor(day / 5) + (Math.floor(day) % 5);
    shippedOn[at] = (shippedOn[at] ?? 0) + units;
    const week = Math.floor(at / 7);
    shippedIn[week] = (shippedIn[week] ?? 0) + units;
  }
  return { shippedOn, shippedIn };
}

/** Counted in weeks 5 to 5 + `weeks`. */
function counting(of: typeof plan, weeks: number, asked = 5 * weeks): Counting {
  const window = { first: 5, last: 4 + weeks, workingDays: 5 * weeks, asked },
    arithmetic = arithmeticOf(of),
    stretch = { from: 5 * WEEK, to: (5 + weeks) * WEEK };
  return countingOf(of, window, loadsOf(of, asked / (5 * weeks), stretch, arithmetic), arithmetic);
}

describe('units shipped in loads', () => {
  it('are counted as many as are asked, whatever day the first truck comes', () => {
    const { shipped, loads, isWhole } = counting(plan, 10);
    expect([loads.length, isWhole]).toEqual([1, true]);
    for (let begin = 0; begin < 7; begin++) {
      // Fifty units in ten weeks, of which a plain count sees 49 or 56.
      const seen = shipping(7, 7, begin),
        plain = seen.shippedIn.subarray(5, 15).reduce((sum, units) => sum + units, 0);
      expect([49, 56]).toContain(plain);
      expect(shipped(seen)).toBeCloseTo(50, 9);
    }
  });

  it('are as many less as are missing: 5 % fewer are 47.5 of 50, on average of all beginnings', () => {
    const { shipped, upset } = counting(plan, 10);
    let sum = 0;
    for (let begin = 0; begin < 7; begin++) {
      const units = shipped(shipping(7, 7 / 0.95, begin));
      expect(Math.abs(units - 47.5)).toBeLessThan(1 + upset);
      sum += units;
    }
    expect(sum / 7).toBeCloseTo(47.5, 0);
  });

  it('are counted plainly where fewer than two cycles go into the time, which is said', () => {
    const { shipped, isWhole, upset } = counting(plan, 2);
    expect(isWhole).toBe(false);
    expect(shipped(shipping(7, 7, 1))).toBe(7);
    // 7 or 14 units for 10.
    expect(upset).toBeCloseTo(4, 9);
  });

  it('are counted plainly where trucks carry one', () => {
    const { shipped, loads, upset } = counting(build(1), 10);
    expect([loads.length, upset]).toEqual([0, 0]);
    expect(shipped(shipping(7, 7, 3))).toBe(49);
  });

  it('count as many over a week with a holiday, when a unit less is released', () => {
    // Week 16, from 14 June, has four working days; what is released on them is shipped two weeks later.
    const of = build(3),
      window = { first: 12, last: 21, workingDays: 49, asked: 49 },
      arithmetic = arithmeticOf(of),
      stretch = { from: 12 * WEEK, to: 22 * WEEK },
      { shipped } = countingOf(of, window, loadsOf(of, 1, stretch, arithmetic), arithmetic);
    const seen = shipping(3, 3, 1);
    expect(Math.abs(shipped(seen) - 49)).toBeLessThan(2);
  });

  it('are counted by the parts of a run that has no days', () => {
    const of = build(7, 'length: 1400 days, warm up: 100 days, rate: { per day: 1 }'),
      { bucketEdges, days } = of.model.programme;
    expect(days).toBe(0);
    const window = { first: 0, last: 59, workingDays: 999, asked: 999 },
      arithmetic = arithmeticOf(of),
      loads = loadsOf(of, 1, { from: bucketEdges[0], to: bucketEdges[60] }, arithmetic),
      { shipped } = countingOf(of, window, loads, arithmetic);
    // 1400 days in 60 parts; a truck every 9.8 days of the clock.
    for (let begin = 0; begin < 9.8; begin += 1.4) {
      const shippedIn = new Int32Array(60);
      for (let day = begin; day < 1400; day += 9.8) shippedIn[Math.floor((day * 60) / 1400)] += 7;
      expect(Math.abs(shipped({ shippedIn, shippedOn: new Int32Array(0) }) - 999)).toBeLessThan(1.5);
    }
  });
});

describe('the picture by weeks', () => {
  it('shows the mean over whole loads around each week', () => {
    const of = build(10, 'until: 2027-12-27, rate: { per day: 0.9 }'),
      smooth = overLoads(of)!;
    const seen = shipping(10, 10 / 0.9, 3);
    // Weeks ship 0 or 10 units, that is 0 or 2 a day; loads come on whole days, up to one sooner than they would.
    expect(new Set(seen.shippedIn.subarray(4, 36))).toEqual(new Set([0, 10]));
    for (let week = 4; week < 36; week++) expect(Math.abs(smooth(seen, week) - 0.9)).toBeLessThan(0.15);
  });

  it('is left as it is where a load comes twice a week', () => {
    expect(overLoads(build(3, 'until: 2027-12-27, rate: { per day: 2 }'))).toBeNull();
    expect(overLoads(build(10, 'until: 2027-12-27, arrivals: saturated'))).toBeNull();
    expect(overLoads(build(10, 'length: 1400 days, warm up: 10 days, rate: { per day: 1 }'))).toBeNull();
  });
});
