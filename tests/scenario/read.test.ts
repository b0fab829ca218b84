import { describe, expect, it } from 'vitest';
import { digest } from '../../src/scenario/digest.js';
import { readScenario } from '../../src/scenario/read.js';
import { fixture, readText } from './read-small.js';

function readFull() {
  const { scenario, problems } = readScenario(fixture('full.yaml'), 'full.yaml', fixture);
  expect(problems).toBeUndefined();
  return scenario!;
}
const stepOf = (name: string) => {
  const step = readFull().route.find((entry) => entry.kind === 'step' && entry.name === name);
  if (step?.kind !== 'step') throw new Error(`no step ${name}`);
  return step;
};

describe('a scenario as read', () => {
  it('has minutes, chances from 0 to 1, and every default filled in', () => {
    const { programme, calendars, sites, lanes, feeders } = readFull();
    expect(programme).toEqual({
      start: '2027-03-01',
      zone: 'Europe/Oslo',
      options: { colour: { red: 0.7, white: 0.2, lime: 0.1 }, stripe: { yes: 0.35, no: 0.65 } },
      release: {
        kind: 'rate',
        phases: [
          { from: '2027-03-01', perDay: 2, perWeek: undefined },
          { from: '2027-06-07', perDay: 4, perWeek: undefined },
        ],
      },
      orders: { list: [], dueAfterMin: undefined, replaceScrapped: false },
      quantity: 420,
      until: '2028-12-31',
      lengthMin: undefined,
      warmUpMin: 0,
    });
    expect(calendars['days']).toEqual({
      hours: [{ startMin: 360, endMin: 870 }],
      breaks: [
        { startMin: 570, endMin: 585 },
        { startMin: 720, endMin: 750 },
      ],
      on: [1, 2, 3, 4, 5],
      holidays: [
        { from: '2027-05-31', to: '2027-05-31' },
        { from: '2027-07-12', to: '2027-07-30' },
      ],
      overtime: [],
      shutdowns: [],
    });
    expect(calendars['two shifts'].on).toEqual([1, 2, 3, 4, 6]);
    expect(sites['coachworks'].crews).toEqual({
      painters: { headcount: 6, calendar: undefined },
      inspectors: { headcount: 2, calendar: undefined },
      fitters: { headcount: 14, calendar: 'days' },
    });
    expect(sites['coachworks'].stations['band bay']).toEqual({
      places: 1,
      buffer: 0,
      reworkBuffer: undefined,
      unattended: false,
      calendar: undefined,
      changeover: undefined,
      lot: undefined,
      failures: [],
    });
    expect(sites['coachworks'].stations['bake oven']).toMatchObject({
      places: 4,
      unattended: true,
      lot: { least: 2, most: 4, longestWaitMin: 45 },
    });
    expect(sites['coachworks'].stations['base booth']).toMatchObject({
      reworkBuffer: 'unlimited',
      changeover: { option: 'colour', work: { kind: 'constant', value: 15 } },
    });
    expect(sites['final plant'].stations['finish line'].buffer).toBeUndefined();
    expect(lanes['coachworks to final plant']).toMatchObject({
      drive: { kind: 'pert', low: 180, likely: 210, high: 300 },
      leaves: { kind: 'full' },
      bank: 4,
      arrivalBank: 2,
      docks: { from: 1, to: 1 },
    });
    expect(lanes['by timetable']).toMatchObject({
      leaves: { kind: 'timetable', atMin: [480, 780] },
      bank: undefined,
      load: { kind: 'constant', value: 0 },
      docks: { from: undefined, to: undefined },
    });
    expect(lanes['by wait'].leaves).toEqual({ kind: 'full or wait', longestWaitMin: 240 });
    expect(feeders['axles']).toMatchObject({ kind: 'stock', target: 3, atStart: 3 });
    expect(feeders['cab doors']).toMatchObject({ kind: 'own', target: 0, atStart: 0 });
  });

  it('has the steps with their short forms written out', () => {
    expect(stepOf('prime')).toMatchObject({
      crew: { painters: 2 },
      work: undefined,
      passes: {
        count: 2,
        work: { kind: 'pert', low: 35, likely: 42, high: 60 },
        settle: { kind: 'uniform', low: 6, high: 14 },
      },
      workFactor: { colour: { red: 1.2 } },
      creates: {
        'dirt in primer': { usual: 0.06, byOption: [] },
        runs: { usual: 0.04, byOption: [{ option: 'colour', value: 'red', chance: 0.07 }] },
      },
    });
    expect(stepOf('inspect primer').finds).toMatchObject({
      'dirt in primer': {
        chance: { usual: 0.85 },
        then: { kind: 'repair', work: { kind: 'constant', value: 25 } },
      },
      runs: { then: { kind: 'back', to: 'prime', limit: 3, atLimit: 'pass' } },
      crack: { chance: { usual: 1 }, then: { kind: 'scrap' } },
    });
    expect(stepOf('second band').when).toEqual({ stripe: ['yes'] });
    expect(stepOf('bands')).toMatchObject({
      when: { stripe: ['yes'], colour: ['red', 'lime'] },
      oneShift: true,
    });
    expect(stepOf('take doors off').takesOff).toEqual(['cab doors']);
    expect(stepOf('fit doors').parts).toEqual({ axles: 2, 'cab doors': 'own' });
    expect(stepOf('road test')).toMatchObject({
      sample: { oneIn: 5, by: 'turn' },
      fails: { then: { kind: 'back', to: 'fit doors', limit: 2, atLimit: 'scrap' } },
    });
    expect(stepOf('brake test').sample).toEqual({ oneIn: 5, by: 'random' });
    expect(stepOf('touch up').rework).toBe('only');
  });

  it('has observed times from the CSV column, in minutes', () => {
    expect(stepOf('base coat').work).toEqual({ kind: 'empirical', values: [118.5, 131, 125.25] });
  });

  it.each([
    ['finish 1', { kind: 'triangular', low: 20, likely: 30, high: 60 }],
    ['finish 3', { kind: 'constant', value: 20 }],
    ['finish 4', { kind: 'uniform', low: 10, high: 15 }],
    ['finish 7', { kind: 'exponential', mean: 20 }],
    // Erlang with k phases is a gamma of shape k; a gamma of cv c has shape 1 / c² (textbook identities).
    ['finish 8', { kind: 'gamma', shape: 3, scale: 20 / 3 }],
    ['finish 9', { kind: 'gamma', shape: 4, scale: 5 }],
    ['finish 12', { kind: 'weibull', shape: 1.5, scale: 20 }],
    ['finish 13', { kind: 'normal', mean: 20, sd: 5, low: 0, high: 40 }],
  ])('has the distribution that %s names', (name, expected) => {
    expect(stepOf(name).work).toEqual(expected);
  });

  it('has the discrete times with their weights', () => {
    expect(stepOf('finish 14').process).toEqual({ kind: 'discrete', values: [10, 30], weights: [0.2, 0.8] });
  });

  it('of a steady-state run starts on 2001-01-01 and needs no calendar', () => {
    const { scenario } = readText(fixture('steady.yaml'));
    expect(scenario!.programme).toMatchObject({
      start: '2001-01-01',
      zone: 'UTC',
      release: { kind: 'interval', interval: { kind: 'exponential', mean: 120 } },
      quantity: undefined,
      lengthMin: 300_000,
      warmUpMin: 30_000,
    });
  });

  it('may be written as JSON', () => {
    const scenario = {
      scenario: 'One bench',
      programme: { arrivals: 'saturated', length: '10 h' },
      sites: { works: { stations: { bench: {} } } },
      route: [{ step: 'build', at: 'bench', work: '1 h' }],
    };
    expect(readText(JSON.stringify(scenario, null, 2)).scenario).toMatchObject({
      name: 'One bench',
      programme: { release: { kind: 'saturated' } },
    });
  });

  it('may reuse a part by anchor and alias', () => {
    const text = fixture('small.yaml')
      .replace('{ painters: 2 }', '&pair { painters: 2 }')
      .replace('{ painters: 1 }', '*pair');
    expect(readText(text).scenario!.route[3]).toMatchObject({ name: 'bands', crew: { painters: 2 } });
  });
});

describe('the digest', () => {
  const of = (text: string): string => digest(readText(text).scenario!);
  const small = fixture('small.yaml');

  it('is the same for files that say the same in other words', () => {
    expect(of(small)).toMatch(/^[0-9a-f]{64}$/);
    expect(of(small.replace('work: 20 min', 'work: { constant: 1200 s } # a remark'))).toBe(of(small));
    expect(
      of(
        small.replace(
          '{ step: bake, at: oven, process: 50 min }',
          '{ process: 50 min, at: oven, step: bake }',
        ),
      ),
    ).toBe(of(small));
  });

  it('differs where a number or the order of names does', () => {
    expect(of(small.replace('work: 20 min', 'work: 21 min'))).not.toBe(of(small));
    expect(of(small.replace('red: 70 %, white: 30 %', 'white: 30 %, red: 70 %'))).not.toBe(of(small));
  });
});
