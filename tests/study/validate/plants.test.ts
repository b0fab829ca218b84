import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import type { ValidateResults } from '../../../src/study/validate/results.js';
import { lastStepOf } from '../../../src/study/validate/start/log-read.js';
import { validateStudy } from '../../../src/study/validate/validate.js';
import { chassisWorks, twoPlants } from './plants.js';
import { logOf, scenarioOf, sourceOf } from './shop.js';

const held = (scenario: Scenario, real: Scenario, to?: string): Promise<ValidateResults> =>
    validateStudy({
      scenario,
      file: 'made.yaml',
      log: sourceOf(logOf(real, 'real')),
      seed: 'model',
      replications: 10,
      to,
    }),
  rule = (name: string): string =>
    readFileSync(new URL(`../../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8');

describe('a scenario held against a log of its own', () => {
  it.each([
    ['own parts, a team, lots, a pulse line, steps side by side and a change on a date', chassisWorks],
    ['two sites, a lane, a feeder, shifts, absence and failures', twoPlants],
  ])('agrees, with %s', async (_, yaml) => {
    const short = yaml.replace(/quantity: \d+/, 'quantity: 24'),
      { verdict, units, measures } = await held(scenarioOf(short), scenarioOf(short));
    expect(units.entered).toBe(24);
    expect(measures.filter(({ agrees }) => agrees === false)).toEqual([]);
    expect(verdict).toBe('agrees');
  });

  it('agrees with a log of stays alone: nothing is said of what it does not tell', async () => {
    const yaml = twoPlants.replace(/quantity: \d+/, 'quantity: 40'),
      kinds = ['arrive', 'start', 'end'],
      stays = logOf(scenarioOf(yaml), 'real').filter(
        ({ type, kind, station }) => type === 'unit' && kinds.includes(kind) && !station.startsWith('ferry'),
      ),
      { units, notes, measures } = await validateStudy({
        scenario: scenarioOf(yaml),
        file: 'made.yaml',
        log: sourceOf(stays),
        seed: 'model',
        replications: 10,
      });
    expect(measures.filter(({ agrees }) => agrees === false)).toEqual([]);
    // Who is done with the last look is taken for gone.
    expect(units.shipped).toBeGreaterThan(10);
    expect(notes.find((note) => note.startsWith('The log does not tell of'))).toBe(
      'The log does not tell of 3 steps, and nothing is said of them: ferry, build console, try console.',
    );
  });

  it('agrees where rules decide on overtime: what is due is that of the whole programme', async () => {
    // No chance in it: every value of a build is that of the log.
    const scenario = scenarioOf(rule('03-overtime')),
      { measures } = await held(scenario, scenario);
    const compared = measures.filter(({ simulated }) => simulated !== null);
    expect(compared.length).toBeGreaterThan(5);
    for (const { what, real, simulated } of compared)
      expect([what, simulated?.middle]).toEqual([what, expect.closeTo(real ?? NaN, 6)]);
  });

  it('agrees where units stand on the floor when the programme starts', async () => {
    const scenario = scenarioOf(`
scenario: Opening
programme: { start: 2027-03-01, quantity: 9, rate: { per day: 2 }, opening: [{ at: fit, build: OLD }] }
calendars: { day: { hours: ["06:00-14:00"] } }
sites: { shop: { zone: Europe/Oslo, calendar: day, stations: { saw: {}, bench: { buffer: 4 } } } }
route: [{ step: cut, at: saw, work: 1 h }, { step: fit, at: bench, work: 2 h }]
`),
      { units, verdict, measures } = await held(scenario, scenario);
    // The last day of a log is not compared, as it may not be whole: two of eight came in on it.
    expect([units.standing, units.entered]).toEqual([1, 6]);
    expect(verdict).toBe('agrees');
    for (const { real, simulated } of measures)
      if (simulated !== null) expect(simulated.middle).toBeCloseTo(real ?? NaN, 6);
  });
});

it('takes a unit for gone at the last step that every unit does', () => {
  const model = compile(
      scenarioOf(`
scenario: A hold at the end
programme: { start: 2027-03-01, quantity: 9, rate: { per day: 2 }, options: { top: { yes: 50 %, no: 50 % } } }
defects: { gap: {} }
sites: { shop: { zone: UTC, crews: { fitters: 2 }, stations: { saw: {}, bench: { buffer: 4 }, yard: { places: 4 } } } }
route:
  - { step: cut, at: saw, work: 1 h, creates: { gap: 50 % } }
  - { step: look, at: bench, work: 1 h, finds: { gap: { chance: 90 %, carry: 10 min } } }
  - { step: fit top, at: bench, when: { top: yes }, work: 1 h }
  - { step: clear, at: yard, crew: { fitters: 1 }, hold: { mend: 10 min } }
`),
    ),
    last = lastStepOf(model);
  expect([last.name, [...last.behind]]).toEqual(['look', ['clear', 'fit top']]);
  expect(lastStepOf(model, new Set(['cut'])).name).toBe('cut');
});

it('compares units shipped week by week, whole weeks alone', async () => {
  // By hand: one a day on 5 days, out on the same day; the third week is not whole.
  const scenario = scenarioOf(`
scenario: One a day
programme: { start: 2027-03-01, quantity: 13, rate: { per day: 1 } }
calendars: { day: { hours: ["06:00-14:00"] } }
sites: { shop: { zone: Europe/Oslo, calendar: day, stations: { saw: {} } } }
route: [{ step: cut, at: saw, work: 1 h }]
`),
    { measures } = await held(scenario, scenario, '2027-03-17');
  expect(
    measures.flatMap(({ topic, what, real }) =>
      topic === 'rate' && what.includes('week') ? [[what, real]] : [],
    ),
  ).toEqual([
    ['units shipped in the week from 2027-03-01', 5],
    ['units shipped in the week from 2027-03-08', 5],
  ]);
});

it('sees a stop of a week in that week, though as many are shipped in all', async () => {
  const yaml = (more = ''): string => `
scenario: A stop
programme: { start: 2027-03-01, until: 2027-05-10, quantity: 150, rate: { per day: 4 } }
calendars: { day: { hours: ["06:00-14:00"] } }
sites: { shop: { zone: Europe/Oslo, calendar: day, stations: { saw: { places: 2, buffer: unlimited } } } }
${more}
route: [{ step: cut, at: saw, work: { mean: 3 h, cv: 0.2 } }]
`;
  const stopped = scenarioOf(yaml('outages: [{ stations: saw, from: 2027-03-22, to: 2027-03-26 }]')),
    { measures } = await held(scenarioOf(yaml()), stopped);
  const out = measures.filter(({ agrees, topic }) => agrees === false && topic === 'rate');
  expect(out.map(({ what }) => what)).toContain('units shipped in the week from 2027-03-22');
  expect(out.map(({ what }) => what)).not.toContain('units shipped a working day');
});
