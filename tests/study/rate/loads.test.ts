import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { type RateOptions, rateStudy } from '../../../src/study/rate/rate.js';
import { boundsOf } from '../../../src/study/statistics/estimate.js';

/** Every number is invented. 2027-03-01 is a Monday; nothing is left to chance. */
const build = (sites: string, lanes: string, route: string): string => `
scenario: in loads
programme: { start: 2027-03-01, zone: UTC, quantity: 300, rate: { per day: 2 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited } } }
  b: { zone: UTC, calendar: days, stations: { ${sites}two: { buffer: unlimited } } }
lanes: { ${lanes} }
route: [{ step: make, at: one, work: 1 h }, { lane: road }, ${route}{ step: end, at: two, work: 3 h }]
`;
const road = (capacity: number): string =>
  `road: { from: a, to: b, trucks: 2, capacity: ${capacity}, drive: 20 h, return: 2 h, leaves: when full }`;
const lot = (name: string, size: number): string =>
  `${name}: { places: ${size}, unattended: true, buffer: unlimited, lot: { least: ${size}, most: ${size} } }, `;

const truck = (capacity: number): string => build('', road(capacity), '');
const oven = build(lot('oven', 8), road(1), '{ step: bake, at: oven, process: 12 h }, ');
const both = build(lot('oven', 8), road(10), '{ step: bake, at: oven, process: 12 h }, ');
const weekly = `
scenario: parts are short
programme: { start: 2027-04-05, zone: UTC, quantity: 200, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites: { a: { zone: UTC, calendar: days, stations: { s: { buffer: 4 }, t: { buffer: 4 } } } }
supplies: { packs: { site: a, at start: 5, deliveries: { lot: 10, every: 7 days, from: 2027-04-12 } } }
route: [{ step: one, at: s, work: 70 min }, { step: two, at: t, work: 60 min, parts: { packs: 1 } }]
`;

function study(yaml: string, from: number, to: number, options: Partial<RateOptions> = {}) {
  const { scenario, problems } = readScenario(yaml, 'loads.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return rateStudy({
    scenario,
    file: 'loads.yaml',
    from,
    to,
    step: 0.1,
    sure: 0.3,
    replications: 2,
    seed: '1',
    workers: 1,
    ...options,
  });
}

/** Every rate by itself, so that no search passes one over; those that hold, and those looked at. */
async function holding(
  yaml: string,
  from: number,
  to: number,
  ceiling: number,
  options: Partial<RateOptions> = {},
) {
  const rates = Array.from(
      { length: Math.round((to - from) / 0.1) + 1 },
      (_, i) => +(from + i * 0.1).toFixed(1),
    ),
    held: number[] = [];
  for (const perDay of rates) {
    const { answer, points } = await study(yaml, perDay, perDay, options);
    if (answer.highestPerDay !== perDay) continue;
    held.push(perDay);
    if (perDay > ceiling) continue;
    // What is asked is shipped: within the interval, which here is what loads can make of the count, or by half
    // a unit in the window.
    const { asked, shippedPerDay } = points[0],
      { low, high } = boundsOf(shippedPerDay),
      rounding = (0.5 * perDay) / asked;
    expect(low).toBeLessThanOrEqual(perDay + rounding);
    expect(high).toBeGreaterThanOrEqual(perDay - rounding);
  }
  return { rates, held };
}

describe('the rates that hold where units come in loads', () => {
  // One place at 3 h in 8 h a day: 8 / 3 = 2.67 a day.
  it.each([
    ['a truck of ten', truck(10), 0.4],
    ['a truck of six', truck(6), 0.4],
    ['an oven of eight', oven, 0.4],
    ['a truck of ten, then an oven of eight', both, 1],
  ])('are all up to what arithmetic allows, 2.67 a day: %s', async (_, yaml, from) => {
    const { rates, held } = await holding(yaml, from, 2.9, 8 / 3);
    expect(held).toEqual(rates.filter((perDay) => perDay <= 8 / 3));
  });

  it('are those within one step of it where only six weeks are judged: a truck of six', async () => {
    const { rates, held } = await holding(truck(6), 1.7, 2.9, 8 / 3, { weeks: 6 });
    expect(held).toEqual(rates.slice(0, held.length));
    expect(Math.abs(held.at(-1)! - 8 / 3)).toBeLessThan(0.1);
  });

  it('are all up to what is delivered: ten packs a week, two a day', async () => {
    const { rates, held } = await holding(weekly, 1, 2.6, 2);
    expect(held).toEqual(rates.filter((perDay) => perDay <= 2));
  });

  it('are found by a search over them all, which says what it counted', async () => {
    const { answer, counting, window, points } = await study(truck(10), 0.4, 3);
    expect(answer).toMatchObject({ highestPerDay: 2.6, abovePerDay: 2.7, contradictions: [] });
    expect(answer.sentence).toContain('Counted over whole loads (trucks of 10 on road).');
    expect(counting).toMatchObject({
      loads: [{ what: 'trucks of 10 on road', cycleDays: 25 }],
      isWhole: true,
    });
    expect(window).toMatchObject({ weeks: 26, isLonger: false });
    // All keep up with 2.7 by the 2 % that may be missing, but 8 / 3 a day is all that comes out.
    const above = points.find(({ perDay }) => perDay === 2.7)!;
    expect(above).toMatchObject({ verdict: 'does not hold', keptUp: { count: 2 } });
    expect(above.canShip.most).toBeCloseTo(8 / 3, 2);
  });
});

describe('the weeks that loads take', () => {
  it('are more than usual where two of them would not fill the usual ones', async () => {
    // Forty at 0.5 a day are 80 working days; twice that are 32 weeks.
    const { window, answer } = await study(truck(40), 0.5, 0.6);
    expect(window).toMatchObject({ weeks: 32, isLonger: true });
    expect(answer).toMatchObject({ highestPerDay: 0.6, abovePerDay: null });
    expect(answer.sentence).toContain('(trucks of 40 on road), in 32 weeks, which they take.');
  });

  it('are asked for where the planner gives fewer', async () => {
    await expect(study(truck(40), 0.5, 1, { weeks: 26 })).rejects.toThrow(
      'programme: expected a window of at least 32 weeks at 0.5 a day, where trucks of 40 on road come every 80 working days, got 26; give more --weeks or a higher rate',
    );
    await expect(study(truck(40), 0.1, 1)).rejects.toThrow(
      'programme: expected rates that can be judged in 104 weeks, got 0.1 a day, which takes 160; give a higher rate, or --weeks 160',
    );
  });

  it('are as many as fifty units take, where the rate is low', async () => {
    const { window } = await study(truck(1), 0.2, 0.2);
    expect(window).toMatchObject({ weeks: 50, isLonger: true });
  });
});
