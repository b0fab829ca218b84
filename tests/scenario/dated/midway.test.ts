import { describe, expect, it } from 'vitest';
import { cannotComeMidway, compile } from '../../../src/scenario/compile.js';
import { digest } from '../../../src/scenario/digest.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { dated, scenarioOf } from '../../flow/dated/played.js';

const yaml = `
scenario: two sites
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 10, options: { colour: { red: 40 %, blue: 60 % } } }
calendars:
  days: { hours: ["06:00-14:00"], on: Mon-Fri }
  two: { hours: ["06:00-14:00", "14:00-22:00"], on: Mon-Fri }
defects: { dent: {} }
sites:
  works:
    calendar: days
    crews: { fitters: 3, painters: { headcount: 2, absence: 5 % } }
    stations: { bay: { places: 2, buffer: 1 }, booth: { buffer: 2 }, bench: {} }
  plant: { stations: { hall: { buffer: unlimited } } }
lanes: { road: { from: works, to: plant, trucks: 2, capacity: 2, drive: 4 h, leaves: { at: ["08:00"] } } }
supplies: { bolts: { site: works, at start: 5, reorder: { level: 2, lot: 5, lead time: 3 days } } }
feeders: { axles: { stock: 2, at start: 1, route: [{ step: build, at: bench, work: 2 h }] } }
carriers: { dollies: { count: 6, from: fit, to: paint } }
teams: { pair: { crew: fitters, people: 1, from: fit, to: paint } }
route:
  - { step: fit, at: bay, crew: { fitters: 1 }, work: 3 h, parts: { bolts: 1, axles: 1 }, creates: { dent: 10 % } }
  - { step: paint, at: booth, crew: { painters: 1 }, work: 2 h, finds: { dent: { chance: 90 %, repair: 1 h } } }
  - { lane: road }
  - { step: end, at: hall, work: 1 h }
`;
const base = scenarioOf(yaml);
const with_ = (was: string, is: string): Scenario => {
  expect(yaml).toContain(was);
  return scenarioOf(yaml.replace(was, is));
};
const why = (after: Scenario): string | null =>
  cannotComeMidway(after, [{ until: '2027-03-10', scenario: base }]);

describe('changes that come midway', () => {
  it.each([
    ['places: 2', 'places: 3'],
    ['buffer: 1 }', 'buffer: unlimited, rework buffer: 1 }'],
    ['fitters: 3', 'fitters: 5'],
    ['fitters: 3', 'fitters: 2'],
    ['painters: { headcount: 2, absence: 5 % }', 'painters: { headcount: [4], absence: 4 % }'],
    ['"06:00-14:00"], on: Mon-Fri', '"05:00-15:00"], on: Mon-Sat'],
    ['calendar: days', 'calendar: two'],
    ['trucks: 2, capacity: 2, drive: 4 h', 'trucks: 3, capacity: 1, drive: 3 h'],
    ['leaves: { at: ["08:00"] }', 'leaves: { when full or after: 6 h }'],
    ['level: 2, lot: 5, lead time: 3 days', 'level: 3, lot: 8, lead time: { low: 1 days, high: 2 days }'],
    ['stock: 2', 'stock: 4'],
    ['count: 6', 'count: 7'],
    ['work: 3 h', 'work: { mean: 2 h, cv: 0.3 }'],
    ['dent: 10 %', 'dent: 5 %'],
    ['chance: 90 %', 'chance: 50 %'],
  ])('can be of %s: %s', (was, is) => {
    const after = with_(was, is);
    expect(why(after)).toBeNull();
    expect(compile({ ...after, before: [{ until: '2027-03-10', scenario: base }] }).later).toHaveLength(1);
  });

  it.each([
    ['places: 2', 'places: 1', 'fewer places (bay)'],
    ['absence: 5 %', 'absence: 5 %, hand over: wait', 'another hand-over (painters)'],
    [
      'absence: 5 %',
      'absence: 0 %',
      'a time or a chance that is no longer zero, or has become it (crew painters in works/absence)',
    ],
    ['trucks: 2', 'trucks: 1', 'fewer trucks (road)'],
    ['count: 6', 'count: 5', 'fewer carriers (dollies)'],
    ['stock: 2', 'stock: 1', 'a lower stock (axles)'],
    ['at start: 5', 'at start: 6', 'another stock at the start (bolts)'],
    ['bench: {}', 'bench: {}, spare: {}', 'other stations, or others of their keys (spare)'],
    ['people: 1', 'people: 2', 'other carriers or teams, or others of their steps or people (pair)'],
    [
      'step: end, at: hall',
      'step: finish, at: hall',
      'other steps, or steps with other stations, settings, people, equipment, parts or conditions (finish)',
    ],
    [
      'crew: { painters: 1 }',
      'crew: { painters: 2 }',
      'other steps, or steps with other stations, settings, people, equipment, parts or conditions',
    ],
    ['stock: 2, at', 'stock: 2, full kit: false, at', 'other feeders, or others of their keys (axles)'],
    [
      'parts: { bolts: 1, axles: 1 }',
      'parts: { bolts: 1, axles: 1 }, wait for parts: in buffer',
      'other steps, or steps with other stations, settings, people, equipment, parts or conditions (fit)',
    ],
    [
      'repair: 1 h',
      'scrap: true',
      'a time or a chance that is no longer zero, or has become it (paint/repair dent)',
    ],
    [
      'stations: { hall',
      'calendar: days, stations: { hall',
      'hours where there were none, or none any more (hall)',
    ],
    ['work: 1 h }', 'work: 0 h }', 'a time or a chance that is no longer zero, or has become it (end/work)'],
    ['red: 40 %, blue: 60 %', 'red: 50 %, blue: 50 %', 'another programme, or other options'],
  ])('cannot be of %s: %s, %s', (was, is, reason) => {
    expect(why(with_(was, is))).toBe(reason);
  });

  it('leave a shift for which a team waits its people', () => {
    const shifts = (people: string): Scenario =>
      scenarioOf(
        yaml
          .replace('fitters: 3', `fitters: { headcount: [${people}], hand over: wait }`)
          .replace('calendar: days', 'calendar: two'),
      );
    const reason = (was: string, is: string): string | null =>
      cannotComeMidway(shifts(is), [{ until: '2027-03-10', scenario: shifts(was) }]);
    expect(reason('3, 2', '4, 2')).toBeNull();
    expect(reason('3, 0', '3, 2')).toBeNull();
    expect(reason('3, 2', '4, 0')).toBe('fewer people in a shift for which a team waits (fitters)');
  });

  it('are refused in words where they cannot', () => {
    expect(() => compile(dated(yaml.replace('places: 2', 'places: 1'), yaml, '2027-03-10'))).toThrow(
      new RangeError(
        'costs.changes: expected changes that can come midway, got fewer places (bay); leave the date out',
      ),
    );
  });

  it('have the calendar of their time, with a window over the date that is the same in both in one', () => {
    const night = yaml.replaceAll('"06:00-14:00"', '"22:00-06:00"'),
      model = compile(dated(night.replace('"14:00-22:00"', '"15:00-21:00"'), night, '2027-03-03'));
    expect(model.calendars).toEqual(compile(scenarioOf(night)).calendars);
    const longer = compile(dated(night.replaceAll('22:00-06:00', '22:00-07:00'), night, '2027-03-03')),
      { start, end, shiftEnd } = longer.calendars[0];
    // The night over the date is cut where the other hours begin: a shift of its own from there on.
    expect([...start.slice(0, 5)].map((time) => time / 60)).toEqual([22, 46, 48, 70, 94]);
    expect([...end.slice(0, 5)].map((time) => time / 60)).toEqual([30, 48, 55, 79, 103]);
    expect([...shiftEnd.slice(0, 5)].map((time) => time / 60)).toEqual([30, 54, 55, 79, 103]);
  });

  it('release by the working days of their time', () => {
    const saturdays = compile(dated(yaml.replaceAll('on: Mon-Fri', 'on: Mon-Sat'), yaml, '2027-03-06'));
    // Two a day: Monday to Saturday with the eleventh and twelfth left out.
    expect([...saturdays.programme.times].map((time) => Math.floor(time / 1440))).toEqual([
      0, 0, 1, 1, 2, 2, 3, 3, 4, 4,
    ]);
    const early = compile(
      dated(
        yaml.replaceAll('on: Mon-Fri', 'on: Mon-Sat'),
        yaml.replaceAll('on: Mon-Fri', 'on: Tue-Fri'),
        '2027-03-06',
      ),
    );
    expect([...early.programme.times].map((time) => Math.floor(time / 1440))).toEqual([
      1, 1, 2, 2, 3, 3, 4, 4, 5, 5,
    ]);
  });
});

describe('the digest', () => {
  it('tells apart scenarios with other dates or stages, and leaves prices of changes out', () => {
    const one = { ...base, before: [{ until: '2027-03-10', scenario: base }] },
      costs = {
        currency: 'EUR',
        people: {},
        trucks: {},
        changeovers: {},
        supplies: {},
      } as unknown as NonNullable<Scenario['costs']>;
    const all = [
      base,
      one,
      { ...base, before: [{ until: '2027-03-11', scenario: base }] },
      { ...base, before: [{ until: '2027-03-10', scenario: with_('work: 3 h', 'work: 4 h') }] },
    ];
    expect(new Set(all.map(digest)).size).toBe(4);
    const priced = (changes: NonNullable<typeof costs.changes>): string =>
      digest({
        ...base,
        before: [{ until: '2027-03-10', scenario: { ...base, costs: { ...costs, changes } } }],
      });
    expect(priced([])).toBe(priced([{} as never]));
    expect(priced([])).not.toBe(digest(one));
  });
});
