import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { observe } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { demand } from '../../../src/study/capacity/demand.js';
import {
  back,
  chance,
  feeder,
  minutes,
  programme,
  repair,
  scenario,
  scrap,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

/** Invented: nested loops, several kinds, escapes, samples, limits, options, feeders with scrap. */
const roomy = scenario({
  sites: {
    yard: site(
      Object.fromEntries(
        ['prep', 'booth', 'oven', 'look', 'strip', 'fit', 'test', 'bench'].map((name) => [
          name,
          station({ places: 40, buffer: undefined }),
        ]),
      ),
    ),
  },
  defects: { dirt: { note: undefined }, runs: { note: undefined }, gap: { note: undefined } },
  feeders: {
    axles: feeder(
      [
        step('weld', 'bench', { work: minutes(3), creates: { gap: chance(0.1) } }),
        step('gauge', 'bench', { work: minutes(1), finds: { gap: scrap(0.8) } }),
      ],
      { target: 30 },
    ),
    doors: feeder([step('trim', 'bench', { work: minutes(4) })], { kind: 'own', target: 0 }),
  },
  route: [
    step('wash', 'prep', { work: minutes(4), rework: 'skip' }),
    step('sand', 'prep', { work: minutes(6), rework: 'only' }),
    step('coat', 'booth', {
      work: minutes(9),
      creates: { dirt: chance(0.25), runs: chance(0.1, [{ option: 'colour', value: 'red', chance: 0.3 }]) },
    }),
    step('second coat', 'booth', {
      work: minutes(9),
      when: { colour: ['red'] },
      creates: { dirt: chance(0.1) },
    }),
    step('bake', 'oven', { process: minutes(30) }),
    step('inspect', 'look', {
      work: minutes(5),
      finds: { dirt: repair(0.6, minutes(8)), runs: back(0.8, 'sand', { limit: 2 }) },
    }),
    step('take off', 'strip', { work: minutes(5), takesOff: ['doors'] }),
    step('final look', 'look', {
      work: minutes(5),
      finds: { runs: repair(0.9, minutes(12)), dirt: repair(0.9, minutes(4)) },
    }),
    step('put on', 'fit', { work: minutes(5), parts: { axles: 2, doors: 'own' } }),
    step('adjust', 'fit', { work: minutes(7) }),
    step('road test', 'test', {
      work: minutes(10),
      sample: { oneIn: 3, by: 'random' },
      fails: back(0.3, 'adjust', { limit: 1, atLimit: 'scrap' }),
    }),
  ],
  programme: programme({
    quantity: 20_000,
    options: { colour: { red: 0.4, white: 0.6 } },
    release: { kind: 'interval', interval: { kind: 'exponential', mean: 5 } },
  }),
});

describe('expected visits and repairs', () => {
  it('agree with 20,000 units through the engine at every step', { timeout: 30_000 }, () => {
    const model = compile(roomy);
    const expected = demand(model);
    const run = simulate(prepare(model), 'capacity against engine', 1);
    const seen = Array.from(observe(run, 1).stepVisits, (visits) => visits / 20_000);
    // A step's visits a unit have a standard deviation below 1; over 20,000 units the mean's is below 0.007,
    // so 0.025 is 3.5 of them.
    const off = seen
      .map((visits, s) => ({ step: model.steps.names[s], visits, expected: expected.visits[s] }))
      .filter((row) => Math.abs(row.visits - row.expected) > 0.025);
    expect(off).toEqual([]);
    expect(Math.min(...expected.visits)).toBeGreaterThan(0.09);
    const scrapped = run.tally.scrapped / 20_000;
    // Of a third tested, 0.3 fail and are tested again; 0.3 of those are scrapped: 0.03.
    expect(scrapped).toBeCloseTo(0.03, 2);
  });
});

describe('repairs and mending by option', () => {
  it('are counted by the shares of options, with chances that go by the same option', () => {
    const { scenario, problems } = readScenario(
      `
scenario: longer on lime
programme: { arrivals: 9 h, quantity: 8000, options: { colour: { lime: 25 %, white: 75 % }, body: { van: 40 %, cab: 60 % } } }
defects: { dirt: {}, dent: {} }
sites: { hall: { stations: { booth: {}, gate: { buffer: unlimited }, hold area: { buffer: unlimited } } } }
route:
  - { step: coat, at: booth, work: 1 h, creates: { dirt: { usual: 20 %, colour: { lime: 60 % } }, dent: 50 % } }
  - step: look
    at: gate
    finds:
      dirt: { chance: 100 %, repair: { usual: 25 min, colour: { lime: 40 min }, body: { van: 30 min } } }
      dent: { chance: 100 %, carry: { usual: 1 h, body: { van: { mean: 2 h, cv: 0.2 } } } }
  - { step: hold, at: hold area, hold: true }
`,
      'lime.yaml',
      () => '',
    );
    if (scenario === undefined) throw new Error(JSON.stringify(problems));
    const model = compile(scenario),
      { attended } = demand(model),
      seen = observe(simulate(prepare(model), 'lime', 1), 1);
    // Lime 0.25 × 0.6 × 40, other vans and cabs 0.75 × 0.2 × (0.4 × 30 + 0.6 × 25).
    expect(attended[model.steps.names.indexOf('look')]).toBeCloseTo(6 + 4.05, 9);
    expect(attended[model.steps.names.indexOf('hold')]).toBeCloseTo(0.5 * (0.4 * 120 + 0.6 * 60), 9);
    // 52.05 in all; a unit's repairs have a standard deviation of 55 min, its mean over 8000 units of 0.6.
    const minutes = seen.quality.repairMinutes.reduce((sum, each) => sum + each, 0) / 8000;
    expect(Math.abs(minutes - 52.05)).toBeLessThan(3.5 * 0.6);
  });
});

describe('what a timetable takes away', () => {
  /** Invented, without chance; more units wait than the lane can take. */
  const road = (more: string) => `
scenario: road
programme: { start: 2027-04-05, zone: Europe/Oslo, arrivals: saturated, warm up: 28 days, length: 336 days }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  a: { zone: Europe/Oslo, calendar: days, stations: { s: {} } }
  b: { zone: Europe/Oslo, calendar: days, stations: { t: { buffer: unlimited } } }
lanes: { road: { from: a, to: b, load: 30 min, unload: 30 min, ${more} } }
route:
  - { step: one, at: s, work: 10 min }
  - { lane: road }
  - { step: two, at: t, work: 10 min }
`;

  it.each([
    [
      'a bank of one',
      'trucks: 2, capacity: 3, drive: 1 h, return: 1 h, bank: 1, leaves: { at: ["07:00", "11:00"] }',
      2,
    ],
    [
      'a round trip that misses the next',
      'trucks: 1, capacity: 4, drive: 4 h, return: 4 h, bank: 9, leaves: { at: ["07:00", "11:00"] }',
      4,
    ],
    [
      'half the trucks under way',
      'trucks: 3, capacity: 2, drive: 3 h, return: 3 h, bank: 5, leaves: { at: ["07:00", "09:00", "11:00"] }',
      null,
    ],
    [
      'a dock',
      'trucks: 4, capacity: 2, drive: 1 h, return: 1 h, docks: { from: 1 }, bank: 9, leaves: { at: ["07:00", "11:00"] }',
      4,
    ],
  ])('is what a run without chance ships: %s', (_, more, perDay) => {
    const { scenario, problems } = readScenario(road(more), 'road.yaml', () => '');
    if (scenario === undefined) throw new Error(JSON.stringify(problems));
    const model = compile(scenario),
      row = capacity(model, scenario).rows.find(({ kind }) => kind === 'lane')!,
      { shipped } = observe(simulate(prepare(model), 'road', 1), 1);
    // 48 weeks of five days.
    expect(row.capacityPerDay! / (shipped / 240)).toBeCloseTo(1, 1);
    if (perDay !== null) expect(shipped / 240).toBeCloseTo(perDay, 1);
  });
});

describe('what carriers are held for', () => {
  /** Invented; times without chance. A month passes before it is watched, so that the floor is full. */
  const carts = (leaves: string) => `
scenario: carts
programme: { start: 2027-04-05, zone: Europe/Oslo, warm up: 28 days, length: 364 days, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a: { zone: Europe/Oslo, calendar: days, stations: { s: { buffer: unlimited }, o: { places: 8, unattended: true } } }
  b: { zone: Europe/Oslo, calendar: days, stations: { t: { buffer: unlimited } } }
lanes: { road: { from: a, to: b, trucks: 3, capacity: 10, drive: 2 h, return: 2 h, leaves: ${leaves} } }
carriers: { carts: { count: 60, from: one, to: two, return: 3 h } }
route:
  - { step: one, at: s, work: 70 min }
  - { step: bake, at: o, process: 3 h }
  - { lane: road }
  - { step: two, at: t, work: 60 min }
`;

  it.each([
    ['a timetable', '{ at: ["14:00"] }'],
    ['full trucks', 'when full'],
    ['trucks full or a day and a half late', '{ when full or after: 36 h }'],
  ])('is told to 15 % for %s, where the sure time is less than a third of it', (_, leaves) => {
    const { scenario, problems } = readScenario(carts(leaves), 'carts.yaml', () => '');
    if (scenario === undefined) throw new Error(JSON.stringify(problems));
    const model = compile(scenario),
      row = capacity(model, scenario).rows.find(({ kind }) => kind === 'carrier')!,
      { held, coming } = observe(simulate(prepare(model), 'carts', 1), 1).kept;
    const seen = (held[0] + coming[0]) / 60;
    expect(row.loadAlone! / seen).toBeGreaterThan(0.85);
    expect(row.loadAlone! / seen).toBeLessThan(1.15);
    expect(row.load! / seen).toBeLessThan(1 / 3);
  });
});
