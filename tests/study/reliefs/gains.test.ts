import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { reliefsStudy } from '../../../src/study/reliefs/reliefs.js';

/** Each relief by what it brings, and what the build ships without it. Times are constant, so two runs do. */
async function gains(yaml: string): Promise<{ base: number; of: (text: string) => number; texts: string[] }> {
  const { scenario, problems } = readScenario(yaml, 'made.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  const { base, reliefs, skipped } = await reliefsStudy({
    scenario,
    file: 'made.yaml',
    replications: 2,
    seed: 's',
    workers: 1,
  });
  expect(skipped).toEqual([]);
  return {
    base: base.throughput.mean,
    texts: reliefs.map(({ text }) => text),
    of: (text) => {
      const found = reliefs.find((each) => each.text === text);
      if (found === undefined) throw new Error(`no relief ${text}`);
      return found.gain.mean;
    },
  };
}

describe('what a relief of parts brings, by hand', () => {
  it('deliveries by a rhythm: as many parts as come', async () => {
    // Ten packs every 7 days of five shifts are 2 a working day, 15 are 3, 20 are 4, of 4 asked. What is there
    // at the start is used up before the weeks that are judged.
    const { base, of } = await gains(`
scenario: packs are short
programme: { start: 2027-04-05, quantity: 400, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites: { a: { calendar: days, stations: { s: { buffer: 4 }, t: { buffer: 4 } } } }
supplies: { packs: { site: a, deliveries: { lot: 10, every: 7 days } } }
route:
  - { step: one, at: s, work: 70 min }
  - { step: two, at: t, work: 60 min, parts: { packs: 1 } }
`);
    expect(base).toBeCloseTo(2, 9);
    expect(of('two deliveries of packs in 7 days instead of one')).toBeCloseTo(2, 9);
    // In the second week three of its 15 are out on Wednesday, in all others on Tuesday. A day's weight rises by
    // less than 1/20 there, so that makes less than 3/20 of a unit in 95 days.
    expect(Math.abs(of('larger lots of packs (15 instead of 10)') - 1)).toBeLessThan(0.15 / 95);
    // One unit of the 19 weeks comes into them or falls out.
    expect(Math.abs(of('10 more of packs in stock at the start'))).toBeLessThan(1.5 / 95);
    expect(of('one place more at s')).toBeCloseTo(0, 9);
    expect(of('10 % off the work of two')).toBeCloseTo(0, 9);
  });

  it('deliveries by dates: one more in the widest gap', async () => {
    // Round the clock, an hour a unit, from day 0. The dates lie 2 and 70 days apart.
    const { base, of } = await gains(`
scenario: kits by dates
programme: { start: 2027-04-20, quantity: 20, arrivals: saturated }
sites: { a: { stations: { s: {} } } }
supplies: { kits: { site: a, deliveries: [{ on: 2027-07-01, lot: 10 }, { on: 2027-04-20, lot: 5 }, { on: 2027-04-22, lot: 5 }] } }
route: [{ step: one, at: s, work: 1 h, parts: { kits: 1 } }]
`);
    // Five and five at once, ten on 1 July, out 10 h after it is day 72.
    expect(base).toBeCloseTo(20 / (72 + 10 / 24), 9);
    // Five more on 27 May, as on 22 April: only five wait for 1 July.
    const five = 20 / (72 + 5 / 24);
    expect(base + of('one delivery more of kits (5 on 2027-05-27)')).toBeCloseTo(five, 9);
    expect(base + of('5 more of kits in stock at the start')).toBeCloseTo(five, 9);
    // Eight and eight: four wait.
    expect(base + of('larger lots of kits (half as much again in each)')).toBeCloseTo(20 / (72 + 4 / 24), 9);
  });

  it('orders by a level: what is on order comes once in a lead time', async () => {
    // A unit asks for a part when it begins, and a part is ordered for each that is asked for. With one in a
    // lot and level L the part of a unit is the one ordered L + 1 units before: begin(n) = begin(n - L - 2) +
    // lead time + work, as the unit asks when the one before it is done. So L + 2 units in lead time + work:
    // (3 + 2) in 108 + 12 h, 1 a day.
    const { base, of } = await gains(`
scenario: castings by a level
programme: { start: 2027-04-05, arrivals: saturated, length: 3960 h, warm up: 1320 h }
sites: { a: { stations: { s: {} } } }
supplies: { castings: { site: a, reorder: { level: 3, lot: 1, lead time: 108 h } } }
route: [{ step: one, at: s, work: 12 h, parts: { castings: 1 } }]
`);
    expect(base).toBeCloseTo(1, 2);
    expect(base + of('castings ordered at 4 instead of 3')).toBeCloseTo(6 / 5, 2);
    expect(base + of('lead time of castings a fifth shorter')).toBeCloseTo(5 / ((0.8 * 108 + 12) / 24), 2);
    // Two in a lot, ordered by every second unit: they serve the fourth and the fifth after it. The fourth
    // waits for them, the fifth finds its own: six units in lead time + 2 x work, 30 times in 165 days.
    expect(base + of('larger lots of castings (2 instead of 1)')).toBeCloseTo(6 / ((108 + 24) / 24), 9);
    expect(of('one place more at s')).toBeGreaterThan(0);
  });
});

describe('what a relief of people and places brings, by hand', () => {
  it('one team more is all its people; a part of a team is not tried', async () => {
    // Two of the crew stay with a unit for 4 h at two bays: 6 a day by one team, 12 by two, which is all that
    // the bays can do.
    const { base, of, texts } = await gains(`
scenario: one team
programme: { start: 2027-04-05, arrivals: saturated, length: 960 h, warm up: 48 h }
sites: { a: { crews: { fitters: 2 }, stations: { s: {}, t: {} } } }
teams: { trim team: { crew: fitters, people: 2, from: one, to: two } }
route: [{ step: one, at: s, work: 2 h }, { step: two, at: t, work: 2 h }]
`);
    expect(base).toBeCloseTo(6, 9);
    expect(of('one team more of trim team (2 people more in fitters, a)')).toBeCloseTo(6, 9);
    expect(of('one place more at s')).toBeCloseTo(0, 9);
    expect(texts.filter((text) => text.includes('person'))).toEqual([]);
  });

  it('a person more is tried where steps ask for the crew too, and a team of one is a person', async () => {
    const yaml = (people: number): string => `
scenario: team and helper
programme: { start: 2027-04-05, arrivals: saturated, length: 240 h }
sites: { a: { crews: { fitters: 3 }, stations: { s: {}, t: {} } } }
teams: { trim team: { crew: fitters, people: ${people}, from: one, to: two } }
route: [{ step: one, at: s, work: 2 h }, { step: two, at: t, work: 2 h, crew: { fitters: 1 } }]
`;
    const ofPeople = async (people: number): Promise<string[]> =>
      (await gains(yaml(people))).texts.filter((text) => text.includes('fitters')).sort();
    expect(await ofPeople(2)).toEqual([
      'one person more in fitters (a)',
      'one team more of trim team (2 people more in fitters, a)',
    ]);
    expect(await ofPeople(1)).toEqual(['one person more in fitters (a)']);
  });

  it('one more in the lot of an oven, as one place more beside the lot brings nothing', async () => {
    // Four in 6 h are 16 a day, five are 20. The bench before it does 24.
    const oven = (places: number, lot: string): string => `
scenario: an oven
programme: { start: 2027-04-05, arrivals: saturated, length: 960 h, warm up: 96 h }
sites: { a: { stations: { bench: {}, oven: { places: ${places}, buffer: 8, lot: ${lot} } } } }
route: [{ step: one, at: bench, work: 1 h }, { step: bake, at: oven, process: 6 h }]
`;
    const { base, of, texts } = await gains(oven(4, '{ least: 4, most: 4 }'));
    expect(base).toBeCloseTo(16, 9);
    expect(of('one more in a lot at oven (5 instead of 4)')).toBeCloseTo(4, 9);
    expect(texts).not.toContain('one place more at oven');
    expect((await gains(oven(5, '{ least: 4, most: 4 }'))).base).toBeCloseTo(16, 9);
    // Also where the places are there already.
    expect(
      (await gains(oven(6, '{ most: 4 }'))).of('one more in a lot at oven (5 instead of 4)'),
    ).toBeCloseTo(4, 9);
  });

  it('one more in the target stock of a feeder that takes long but has time', async () => {
    // A part is 6 h on two benches of 3 h. With a target of one the next is begun when one is taken: one in
    // 6 h, 4 a day; with two one in 3 h, as fast as the line takes them.
    const { base, of } = await gains(`
scenario: a thin stock
programme: { start: 2027-04-05, arrivals: saturated, length: 960 h, warm up: 96 h }
sites: { a: { stations: { line: {}, s: {}, t: {} } } }
feeders: { axles: { stock: 1, route: [{ step: cut, at: s, work: 3 h }, { step: weld, at: t, work: 3 h }] } }
route: [{ step: fit, at: line, work: 3 h, parts: { axles: 1 } }]
`);
    expect(base).toBeCloseTo(4, 9);
    expect(of('one more in the target stock of axles (2 instead of 1)')).toBeCloseTo(4, 9);
    expect(of('one place more at s')).toBeCloseTo(0, 9);
  });
});
