import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Costs } from '../../../src/scenario/types/costs.js';
import { type CostResult, lateDays } from '../../../src/study/sections/costs.js';
import { amount } from '../../../src/study/statistics/skewed-interval.js';
import { play, playModel } from '../../flow/run-yaml.js';
import {
  back,
  chance,
  dayShift,
  lane,
  minutes,
  programme,
  scenario,
  scrap,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';
import { observation, twoPlants } from '../made-observation.js';
import { summarise } from '../summarise.js';

const DAY = 1440;

/** Costs by hand, to the cent. Everything is invented. */
const partsOf = ({ parts }: CostResult): Record<string, number> =>
  Object.fromEntries(parts.map(({ name, perUnit }) => [name, perUnit.mean]));

const read = (yaml: string) => readScenario(yaml, 'costs.yaml', () => '').scenario!;

/** One replication of a scenario text, summed up. */
function costsOf(yaml: string): CostResult {
  const { scenario: read } = readScenario(yaml, 'costs.yaml', () => '');
  const { seen, model } = play(yaml);
  return summarise({
    scenario: read!,
    model,
    observations: [seen],
    file: 'costs.yaml',
    seed: 'hand',
    level: 0.95,
  }).costs!;
}

describe('the cost of a unit, from a run by hand', () => {
  // Two units, always ready, on Monday 1 March; a truck for one at a time, without driving hours. Welds
  // 6:00-8:00 and 8:00-10:30 (a break of half an hour); truck 8:00-10:00 and from 10:30, there 9:00 and
  // 11:30; checks 9:00-10:00 and 11:30-12:30.
  const yaml = `
scenario: two units
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2 }
calendars: { days: { hours: ["06:00-14:00"], breaks: ["09:00-09:30"] } }
sites:
  works: { calendar: days, crews: { smiths: 3, painters: 2 }, stations: { bay: { buffer: 1 } } }
  yard: { crews: { clerks: 1 }, stations: { gate: {} } }
lanes: { road: { from: works, to: yard, trucks: 1, capacity: 1, drive: 1 h, return: 1 h, bank: 4, arrival bank: 2 } }
supplies: { packs: { site: works, at start: 5, reorder: { level: 4, lot: 3, lead time: 1 h } } }
route:
  - { step: weld, at: bay, crew: { smiths: 2 }, parts: { packs: 1 }, work: 2 h }
  - lane: road
  - { step: check, at: gate, work: 1 h }
`;
  const END_H = 12.5;

  it('pays people for all their hours on shift to the end of the run', () => {
    // Smiths 3 x 6 h (6:00 to 12:30 less the break), painters 2 x 6 h, the clerk round the clock, 12.5 h.
    const costs = costsOf(
      `${yaml}costs: { currency: EUR, people: { smiths: 46, default: { hour: 30, overtime hour: 45 } } }\n`,
    );
    expect(partsOf(costs)['people']).toBeCloseTo((3 * 6 * 46 + 2 * 6 * 30 + END_H * 30) / 2, 9);
    expect(costs.total.mean).toBeCloseTo(3 * 6 * 46 + 2 * 6 * 30 + END_H * 30, 9);
  });

  it('pays those that nobody names nothing, where there is no default', () => {
    expect(
      partsOf(costsOf(`${yaml}costs: { currency: EUR, people: { painters: 10 } }\n`))['people'],
    ).toBeCloseTo((2 * 6 * 10) / 2, 9);
  });

  it('pays trucks by the trip and by the day of the calendar', () => {
    expect(
      partsOf(costsOf(`${yaml}costs: { currency: EUR, trucks: { road: { trip: 420, day: 240 } } }\n`)),
    ).toEqual({ trucks: (2 * 420 + (240 * END_H) / 24) / 2 });
  });

  it('pays carriers by the day of the calendar, in use or not', () => {
    // Five dollies, of which two are used at most, at 24 a day; skids have no price.
    const { carriers } = partsOf(
      costsOf(`${yaml}carriers: { dollies: { count: 5, from: weld, to: check }, skids: { count: 2, from: check, to: check } }
costs: { currency: EUR, carriers: { dollies: { day: 24 } } }
`),
    );
    expect(carriers).toBeCloseTo((5 * END_H) / 2, 9);
  });

  it('pays for units in work, floor and supplies by the day', () => {
    const costs = costsOf(
      `${yaml}costs: { currency: EUR, unit: { day: 240 }, buffer place: { day: 24 }, supplies: { packs: { lot: 900, stock day: 24 } } }\n`,
    );
    const { 'units in work': work, floor, supplies } = partsOf(costs);
    // The first unit enters at 0:00 and stands on the bay to 8:00, is out at 10:00; the second waits in the
    // buffer from 0:00, out at 12:30.
    expect(work).toBeCloseTo(((10 + 12.5) * 10) / 2, 9);
    // Places 1 + 1, arrival bank 2, buffer 1, bank 4.
    expect(floor).toBeCloseTo((9 * END_H) / 2, 9);
    // Claimed as the units stand in the bay: at 0:00 (stock 4, at the level: a lot of 3 for 1:00) and at 8:00
    // (position 7 - 1 = 6). Stock 4 to 1:00, 7 to 8:00, 6 to 12:30.
    expect(supplies).toBeCloseTo((900 + 4 * 1 + 7 * 7 + 6 * 4.5) / 2, 9);
    expect(costs.perUnit.mean).toBeCloseTo(work + floor + supplies, 9);
  });

  it('pays for floor by where it is: station or bank before site, site before all', () => {
    const { floor } = partsOf(
      costsOf(
        `${yaml}costs: { currency: EUR, buffer place: { day: 24, sites: { yard: 48 }, stations: { bay: 72 }, lanes: { road: { bank: 12 } } } }\n`,
      ),
    );
    // Bay 1 + 1 at 72, gate 1 and arrival bank 2 at the 48 of the yard, bank 4 at 12, a day.
    expect(floor).toBeCloseTo((((2 * 72 + 3 * 48 + 4 * 12) / 24) * END_H) / 2, 9);
    // The works have only the gate and the arrival bank not; one price of a lane is that of both banks.
    const { floor: other } = partsOf(
      costsOf(
        `${yaml}costs: { currency: EUR, buffer place: { day: 24, sites: { works: 48 }, lanes: { road: 6 } } }\n`,
      ),
    );
    expect(other).toBeCloseTo((((2 * 48 + 1 * 24 + 6 * 6) / 24) * END_H) / 2, 9);
  });

  it('pays for each day after the due date, to the hour', () => {
    // A unit an hour from 1:00, three hours of work each: out at 4:00, 7:00, 10:00, due at 5:00, 6:00, 7:00.
    const late = `
scenario: late
programme: { arrivals: 1 h, quantity: 3, due after: 4 h }
sites: { hall: { stations: { bay: { buffer: unlimited } } } }
route: [{ step: build, at: bay, work: 3 h }]
`;
    expect(partsOf(costsOf(`${late}costs: { currency: EUR, late: { day: 24 } }\n`))).toEqual({
      'late units': (0 + 1 + 3) / 3,
    });
    // A price of what is never late is refused.
    const { problems } = readScenario(
      `${late.replace(', due after: 4 h', '')}costs: { currency: EUR, late: { day: 24 } }\n`,
      'late.yaml',
      () => '',
    );
    expect(problems!.map(({ path, wanted }) => [path, wanted])).toEqual([
      ['costs.late', 'due dates (due after, or due in the build list), or no price of late units'],
    ]);
  });

  it('pays for units that are never shipped to the end of the run', () => {
    const seen = {
      ...observation(twoPlants, 1),
      dueAt: Float64Array.of(DAY, 2 * DAY, Infinity, 9 * DAY),
      shippedAt: Float64Array.of(3 * DAY, NaN, NaN, NaN),
      lateMinutes: 2 * DAY,
      endedAt: 7 * DAY,
    };
    // Shipped two days late; lost since day 2; never due; not due before the run ends.
    expect(lateDays(seen)).toBe(2 + 5);
    // Without a quantity only those shipped count.
    const none = new Float64Array();
    expect(lateDays({ ...seen, dueAt: none, shippedAt: none })).toBe(2);
  });

  it('pays send-backs and scrap by the piece, and counts them as rework', () => {
    const costs = costsOf(`
scenario: rework
programme: { arrivals: saturated, quantity: 4 }
defects: { dent: {} }
sites: { hall: { stations: { bay: { rework buffer: 1 }, stand: {} } } }
route:
  - { step: paint, at: bay, work: 1 h, creates: { dent: 99.9999999999 % } }
  - { step: look, at: stand, work: 1 h, sample: 1 in 2, finds: { dent: { chance: 100 %, back to: paint, limit: 2, at limit: scrap } } }
costs: { currency: EUR, send back: 250, scrap: 20000 }
`);
    // Every second unit is looked at: sent back twice, then scrapped. Two of four are shipped.
    expect(partsOf(costs)).toEqual({ 'send-backs': (4 * 250) / 2, scrap: (2 * 20000) / 2 });
    expect(costs.rework.costPerUnit.mean).toBe((4 * 250 + 2 * 20000) / 2);
  });
});

describe('costs of several replications', () => {
  const made = scenario({
    calendars: { days: dayShift },
    sites: {
      yard: site(
        { line: station({ buffer: 2 }) },
        { calendar: 'days', crews: { fitters: { headcount: 2, calendar: undefined } } },
      ),
      port: site({ gate: station() }),
    },
    lanes: { ferry: lane('yard', 'port', { trucks: 2 }) },
    defects: { dent: { note: undefined } },
    route: [
      step('fit', 'line', { work: minutes(10), creates: { dent: chance(0.5) } }),
      step('look', 'line', { work: minutes(1), finds: { dent: back(0.5, 'fit') } }),
      { kind: 'lane', lane: 'ferry', when: {} },
      step('test', 'gate', { work: minutes(1), fails: scrap(0.1) }),
    ],
    programme: programme({ quantity: 90 }),
  });
  const priced = (costs: Costs | undefined) => ({ ...made, costs });
  const costs: Costs = {
    currency: 'NOK',
    people: { default: { hour: 100, overtimeHour: 150 } },
    trucks: { ferry: { trip: 7, day: 3 } },
    unitDay: 11,
    sendBack: 13,
    scrap: 17,
    changeovers: {},
    supplies: {},
    spaceDay: 2,
  };
  const summed = (of: Costs | undefined, shipped: readonly number[]) => {
    const scenario = priced(of);
    return summarise({
      scenario,
      model: compile(scenario),
      file: 'costs.yaml',
      seed: 'hand',
      level: 0.95,
      observations: shipped.map((units, i) => {
        const base = observation(scenario, i + 1);
        return {
          ...base,
          crewTime: { ...base.crewTime, usual: Float64Array.of(30 * 8 * 60 * 2) },
          shipped: units,
          scrapped: 3,
          wip: 5 + i,
          inspections: { ...base.inspections, sentBack: Float64Array.of(4, 0) },
          lanes: { ...base.lanes, trips: Float64Array.of(20) },
        };
      }),
    }).costs;
  };

  it('have parts that add to the whole, and shares that add to 1', () => {
    const { parts, perUnit, total } = summed(costs, [80, 85, 87])!;
    expect(parts.map(({ name }) => name)).toEqual([
      'people',
      'overtime',
      'trucks',
      'units in work',
      'floor',
      'send-backs',
      'scrap',
    ]);
    expect(parts.reduce((sum, part) => sum + part.perUnit.mean, 0)).toBeCloseTo(perUnit.mean, 8);
    expect(parts.reduce((sum, part) => sum + part.share, 0)).toBeCloseTo(1, 12);
    // 42 days: 30 working days x 8 h x 2 people; 2 trucks; spaces 1 + 2 + 1, WIP 5, 6, 7.
    const fixed = 30 * 8 * 2 * 100 + 20 * 7 + 2 * 42 * 3 + 4 * 42 * 2 + 4 * 13 + 3 * 17,
      money = [5, 6, 7].map((wip) => fixed + wip * 42 * 11);
    expect(total).toMatchObject({ mean: money.reduce((a, b) => a + b) / 3, n: 3 });
    const each = money.map((m, i) => m / [80, 85, 87][i]),
      { mean, low, high } = amount(each, 0.95);
    expect(mean).toBeCloseTo(each.reduce((a, b) => a + b) / 3, 9);
    expect(perUnit.low).toBeCloseTo(low!, 8);
    expect(perUnit.high).toBeCloseTo(high!, 8);
  });

  it('count a change of setting like one of an option, whoever makes it', () => {
    // Two units, each baked at 60 and then, in its place, at 80: two changes up and one back, 60 each.
    const { parts } = costsOf(`
scenario: settings
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2 }
sites: { hall: { stations: { oven: { changeover: { on: setting, process: 20 min } } } } }
route:
  - { step: dry, at: oven, process: 30 min, setting: 60 degrees }
  - { step: cure, at: oven, process: 30 min, setting: 80 degrees }
costs: { currency: EUR, changeovers: { oven: 60 } }
`);
    expect(parts.map(({ name, perUnit }) => [name, perUnit.mean])).toEqual([['changeovers', 90]]);
  });

  it('take people, rework and changeovers as they were counted, where they were', () => {
    const painted = scenario({
      sites: {
        yard: site(
          {
            booth: station({
              changeover: { option: 'colour', work: minutes(5), fromTo: {}, batch: undefined },
            }),
            stand: station(),
          },
          {
            crews: {
              painters: { headcount: 2, calendar: undefined },
              smiths: { headcount: 1, calendar: undefined },
            },
          },
        ),
      },
      route: [step('coat', 'booth', { work: minutes(10), crew: { painters: 1, smiths: 1 } })],
      programme: programme({ options: { colour: { red: 0.5, white: 0.5 } } }),
      costs: {
        ...costs,
        trucks: {},
        people: { painters: { hour: 60, overtimeHour: 90 }, smiths: { hour: 30, overtimeHour: 30 } },
        unitDay: undefined,
        spaceDay: undefined,
        changeovers: { booth: 8 },
      },
    });
    const base = observation(painted, 1);
    const counted = {
      crewTime: { ...base.crewTime, usual: Float64Array.of(600, 120), overtime: Float64Array.of(60, 0) },
      reworkMinutes: Float64Array.of(90, 20),
      changeovers: Float64Array.of(0, 3, 4, 0),
    };
    const { parts, rework } = summarise({
      scenario: painted,
      model: compile(painted),
      observations: [{ ...base, shipped: 10, scrapped: 1, ...counted }],
      file: 'costs.yaml',
      seed: 'hand',
      level: 0.95,
    }).costs!;
    expect(Object.fromEntries(parts.map(({ name, perUnit }) => [name, perUnit.mean]))).toEqual({
      people: (10 * 60 + 2 * 30) / 10,
      overtime: 90 / 10,
      changeovers: (7 * 8) / 10,
      'send-backs': 0,
      scrap: 1.7,
    });
    expect(rework.hoursPerUnit.mean).toBeCloseTo(110 / 60 / 10, 12);
    expect(rework.costPerUnit.mean).toBeCloseTo((1.5 * 60 + (20 / 60) * 30 + 17) / 10, 12);
  });

  it('leave a replication out that shipped nothing, and are null without prices', () => {
    expect(summed(costs, [80, 0, 87])!.perUnit.n).toBe(2);
    expect(summed(undefined, [80])).toBeNull();
  });
});

describe('the cost of a unit where things come on a date', () => {
  const works = (places: number, buffer: number, people: number, trucks: number, costs: string): string => `
scenario: more from day 2 on
programme: { start: 2027-03-01, arrivals: saturated, quantity: 4 }
sites:
  works: { crews: { smiths: ${people} }, stations: { bay: { places: ${places}, buffer: ${buffer} } } }
  yard: { stations: { gate: { buffer: unlimited } } }
lanes: { road: { from: works, to: yard, trucks: ${trucks}, capacity: 1, drive: 0 h, bank: 1, leaves: when full } }
route:
  - { step: weld, at: bay, crew: { smiths: 1 }, work: 1 day }
  - lane: road
  - { step: check, at: gate, work: 0 h }
carriers: { dollies: { count: ${3 + trucks}, from: weld, to: check } }
costs: { currency: EUR, people: { smiths: 10 }, trucks: { road: { trip: 1, day: 100 } }, buffer place: { day: 7 }, ${costs} }
`;
  // Out on days 1 and 2, and two on day 3.
  const final = read(works(2, 3, 2, 3, 'standing: { day: 50 }, carriers: { dollies: { day: 11 } }')),
    base = read(works(1, 1, 1, 1, 'standing: { day: 20 }, carriers: { dollies: { day: 10 } }')),
    scenario = { ...final, before: [{ until: '2027-03-03', scenario: base }] },
    model = compile(scenario);

  it('pays people, trucks, carriers, floor and standing for the days on which they are there', () => {
    const { seen } = playModel(model, 'hand', 1);
    expect(seen.endedAt).toBe(3 * DAY);
    const costs = summarise({
      ...{ scenario, model, observations: [seen], file: 'costs.yaml', seed: 'hand', level: 0.95 },
    }).costs!;
    const parts = partsOf(costs);
    expect(parts).toEqual({
      people: (2 * 24 * 10 + 24 * 2 * 10) / 4,
      overtime: 0,
      trucks: (4 + 2 * 100 + 3 * 100) / 4,
      carriers: (2 * 4 * 10 + 6 * 11) / 4,
      // Places of bay, its buffer, one place of gate and the bank.
      floor: ((2 * (1 + 1 + 1 + 1) + (2 + 3 + 1 + 1)) * 7) / 4,
      standing: (2 * 20 + 50) / 4,
    });
  });
});
