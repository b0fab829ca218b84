import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Load } from '../../../src/study/loads/load.js';
import { arithmeticOf, loadsOf, loadsThatMatter, mayGoInLoads } from '../../../src/study/loads/loads.js';
import { countedText, loadsText } from '../../../src/study/loads/words.js';
import { planned } from '../../../src/study/sample/planned.js';

const WEEK = 7 * 1440;

/** Loads of an invented build, by default from the fifth week to the thirtieth; 2027-03-01 is a Monday. */
function loads(parts: string, perDay = 2, { from = 4, to = 30 } = {}): readonly Load[] {
  const { scenario, problems } = readScenario(
    `
scenario: in loads
programme: { start: 2027-03-01, zone: UTC, until: 2028-03-06, options: { kind: { plain: 50 %, long: 50 % } }, rate: { per day: ${perDay} } }
calendars: { days: { hours: ["07:00-15:00"] }, mondays: { hours: ["07:00-15:00"], on: Mon } }
${parts}`,
    'loads.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  const plan = planned(scenario, compile(scenario));
  return loadsOf(plan, perDay, { from: from * WEEK, to: to * WEEK }, arithmeticOf(plan));
}
const told = (parts: string, perDay?: number): (string | number)[][] =>
  loads(parts, perDay).map(({ what, cycleDays, units }) => [what, +cycleDays.toFixed(6), +units.toFixed(6)]);

const byTruck = (lane: string, more = '', calendar = 'days'): string => `
sites:
  a: { zone: UTC, calendar: ${calendar}, stations: { one: { buffer: unlimited } } }
  b: { zone: UTC, calendar: days, stations: { two: { buffer: unlimited } } }
lanes: { road: { from: a, to: b, ${lane} } }
route: [{ step: make, at: one, work: 1 h }, { lane: road${more} }, { step: end, at: two, work: 1 h${more} }]`;

describe('trucks', () => {
  it('when full come every capacity over units a day', () => {
    expect(told(byTruck('trucks: 2, capacity: 10, drive: 20 h'))).toEqual([['trucks of 10 on road', 5, 10]]);
    expect(told(byTruck('trucks: 2, capacity: 10, drive: 20 h'), 0.7)).toEqual([
      ['trucks of 10 on road', 14.285714, 10],
    ]);
  });

  it('that only one in two units takes fill half as often', () => {
    expect(told(byTruck('trucks: 2, capacity: 10, drive: 1 h', ', when: { kind: long }'))).toEqual([
      ['trucks of 10 on road', 10, 20],
    ]);
  });

  it('of one unit are no load', () => {
    expect(told(byTruck('trucks: 2, capacity: 1, drive: 20 h'))).toEqual([]);
  });

  it('that leave after a wait carry what comes while the first one waits', () => {
    // 24 h of the clock are 5/7 of a working day, in which 1.43 units come beside the first: 2 in a truck.
    expect(
      told(byTruck('trucks: 2, capacity: 10, drive: 1 h, leaves: { when full or after: 24 h }')),
    ).toEqual([['trucks of up to 10 on road', 1, 2]]);
    // Two trucks that take 14 days there and back: one every 7 days, five working days, in which ten come.
    expect(
      told(
        byTruck(
          'trucks: 2, capacity: 30, drive: 7 days, return: 7 days, leaves: { when full or after: 1 h }',
        ),
      ),
    ).toEqual([['trucks of up to 30 on road', 5.5, 11]]);
  });

  it('by a timetable are a load where they do not leave every working day', () => {
    const lane = 'trucks: 2, capacity: 10, drive: 1 h, leaves: { at: ["09:00", "14:00"] }';
    expect(told(byTruck(lane))).toEqual([]);
    expect(
      told(`
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited } } }
  m: { zone: UTC, calendar: mondays, stations: { gate: { buffer: unlimited, unattended: true } } }
lanes: { hop: { from: a, to: m, trucks: 1, capacity: 1, drive: 1 h }, road: { from: m, to: a, trucks: 2, capacity: 40, drive: 1 h, leaves: { at: ["12:00"] } } }
route: [{ step: make, at: one, work: 1 h }, { lane: hop }, { step: wait, at: gate, process: 1 h }, { lane: road }, { step: end, at: one, work: 1 h }]`),
    ).toEqual([['departures of road', 5, 10]]);
  });
});

describe('lots', () => {
  const oven = (lot: string, process = '12 h'): string => `
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited }, oven: { places: 8, unattended: true, buffer: unlimited, lot: ${lot} } } }
route: [{ step: make, at: one, work: 1 h }, { step: bake, at: oven, process: ${process} }]`;

  it('of a fixed size come when enough units have', () => {
    expect(told(oven('{ least: 8, most: 8 }'))).toEqual([['lots of 8 at oven', 4, 8]]);
  });

  it('that start with one unit are a load only where more come while the oven is at work', () => {
    expect(told(oven('{ least: 1, most: 8 }'))).toEqual([]);
    // Three days and a half are half a week: 2.5 working days, in which five come.
    expect(told(oven('{ least: 1, most: 8 }', '84 h'))).toEqual([['lots of up to 8 at oven', 2.5, 5]]);
  });

  it('that wait for more are as large as the wait lets them become', () => {
    // 42 h are a quarter of a week, 1.25 working days: 2.5 units beside the first.
    expect(told(oven('{ least: 1, most: 8, longest wait: 42 h }'))).toEqual([
      ['lots of up to 8 at oven', 1.5, 3],
    ]);
  });

  const feeder = (target: number): string => `
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited }, oven: { places: 4, unattended: true, buffer: unlimited, lot: { least: 4, most: 4 } } } }
feeders: { doors: { stock: ${target}, route: [{ step: bake, at: oven, process: 2 h }] } }
route: [{ step: make, at: one, work: 1 h, parts: { doors: 1 } }]`;

  it('of a feeder are none where its stock covers two of them', () => {
    expect(told(feeder(8))).toEqual([]);
    expect(told(feeder(7))).toEqual([['lots of 4 at oven', 2, 4]]);
  });
});

describe('parts from outside', () => {
  const supply = (packs: string): string => `
sites: { a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited } } } }
supplies: { packs: { site: a, ${packs} } }
route: [{ step: make, at: one, work: 1 h, parts: { packs: 1 } }]`;
  const weekly = supply('at start: 20, deliveries: { lot: 10, every: 7 days, from: 2027-03-08 }');

  it('are a load only where units have to wait for a delivery', () => {
    // Ten a week from the second on: 9.5 a week never use them up; 10.5 leave 10 - 0.5 k at the end of week k.
    expect(told(weekly, 1.9)).toEqual([]);
    expect(loads(weekly, 2.1, { from: 4, to: 19 })).toEqual([]);
    expect(loads(weekly, 2.1, { from: 4, to: 24 })).toMatchObject([
      { what: 'deliveries of packs', isTimed: true },
    ]);
    expect(told(weekly, 2.5)).toEqual([['deliveries of packs', 5, 12.5]]);
  });

  it('may be short only when they are late', () => {
    const late = (by: string): string =>
      supply(
        `at start: 12, deliveries: { lot: 10, every: 7 days, from: 2027-03-08 }, late: { chance: 10 %, by: ${by} }`,
      );
    // Of twelve on Monday and ten a week later: two are left; two a day are used.
    expect(told(late('1 day'), 2)).toEqual([]);
    expect(told(late('3 days'), 2)).toEqual([['deliveries of packs', 5, 10]]);
  });

  it('that are ordered are one where the level does not last for the lead time', () => {
    const ordered = (level: number): string =>
      supply(`at start: 12, reorder: { level: ${level}, lot: 12, lead time: 7 days }`);
    expect(told(ordered(9))).toEqual([['lots of packs', 6, 12]]);
    expect(told(ordered(10))).toEqual([]);
  });
});

describe('loads of a build', () => {
  const twice = `
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited } } }
  b: { zone: UTC, calendar: days, stations: { oven: { places: 8, unattended: true, buffer: unlimited, lot: { least: 8, most: 8 } } } }
lanes: { road: { from: a, to: b, trucks: 2, capacity: 3, drive: 18 h } }
route: [{ step: make, at: one, work: 1 h }, { lane: road }, { step: bake, at: oven, process: 12 h }]`;

  it('are told in the order of the route, with the time that they are under way', () => {
    expect(loads(twice, 4).map(({ what, underWayDays }) => [what, underWayDays])).toEqual([
      ['trucks of 3 on road', 0.75],
      ['lots of 8 at oven', 0.5],
    ]);
  });

  it('matter if they come less than once a day, or are more than may be missing', () => {
    const all = loads(twice, 4),
      names = (allowed: number): string[] => loadsThatMatter(all, allowed).map(({ what }) => what);
    expect(names(4)).toEqual(['lots of 8 at oven']);
    expect(names(2)).toEqual(['trucks of 3 on road', 'lots of 8 at oven']);
  });

  it('are not looked for where none can be', () => {
    const of = (capacity: number): boolean => {
      const { scenario } = readScenario(
        `
scenario: in loads
programme: { start: 2027-03-01, zone: UTC, quantity: 9, rate: { per day: 1 } }
${byTruck(`trucks: 1, capacity: ${capacity}, drive: 1 h`, '', 'days').trim()}
calendars: { days: { hours: ["07:00-15:00"] } }`,
        'loads.yaml',
        () => '',
      );
      return mayGoInLoads(compile(scenario!));
    };
    expect([of(1), of(2)]).toEqual([false, true]);
  });

  it('are named, three of them at most', () => {
    const named = (count: number): string =>
      loadsText(
        Array.from('abcde')
          .slice(0, count)
          .map((what) => ({ what })),
      );
    expect([1, 2, 3, 5].map(named)).toEqual(['a', 'a and b', 'a, b and c', 'a, b, c and 2 more']);
    expect(countedText({ loads: [{ what: 'a', cycleDays: 3 }], isWhole: true, upsetUnits: 0.3 })).toBe(
      ', counted over whole loads (a)',
    );
    expect(countedText({ loads: [{ what: 'a', cycleDays: 3 }], isWhole: false, upsetUnits: 6.2 })).toBe(
      ', give or take 7 units that loads make, of which too few come in that time (a)',
    );
    expect(countedText({ loads: [], isWhole: true, upsetUnits: 0 })).toBe('');
  });
});
