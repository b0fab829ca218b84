import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import type { CalendarSpec } from '../../../src/scenario/types/calendars.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { type CapacityRow, type CapacityTable, capacity } from '../../../src/study/capacity/capacity.js';
import {
  back,
  chance,
  dayShift,
  feeder,
  lane,
  minutes,
  programme,
  repair,
  scenario,
  scrap,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

const table = (from: Scenario): CapacityTable => capacity(compile(from), from);
function rowOf(found: CapacityTable, kind: CapacityRow['kind'], name: string): CapacityRow {
  const row = found.rows.find((each) => each.kind === kind && each.name === name);
  if (row === undefined) throw new Error(`expected a row for ${kind} '${name}', got none`);
  return row;
}
/** 480 working minutes a day, Monday to Friday, no holidays: hand arithmetic is exact over whole weeks. */
const calendars = { days: dayShift };
const ratePerDay = (perDay: number) =>
  programme({ release: { kind: 'rate', phases: [{ from: '2027-03-01', perDay }] }, quantity: 100 });

describe('capacity: kits and supplies', () => {
  /**
   * Each unit takes 2 packs and a kit; a kit takes a pack and, at a test that fails for one in five, another.
   */
  const packs = (
    order: Scenario['supplies'][string]['order'],
    late?: { chance: number; by: ReturnType<typeof minutes> },
  ): CapacityTable =>
    table(
      scenario({
        calendars,
        programme: ratePerDay(2),
        sites: { yard: site({ line: station({ places: 2 }), bench: station() }, { calendar: 'days' }) },
        supplies: { packs: { site: 'yard', atStart: 0, order, late } },
        feeders: {
          kits: feeder([
            step('make ready', 'bench', { work: minutes(30), parts: { packs: 1 } }),
            step('test', 'bench', { work: minutes(10), fails: back(0.2, 'make ready', { limit: 1000 }) }),
          ]),
        },
        route: [step('fit', 'line', { work: minutes(100), parts: { packs: 2, kits: 1 } })],
      }),
    );
  const perUnit = 2 + 1 / 0.8;

  it('a rhythm of 13 packs a week carries 13 in five working days', () => {
    expect(
      rowOf(
        packs({ kind: 'rhythm', lot: 13, everyDays: 7, from: undefined, to: undefined }),
        'supply',
        'packs',
      ),
    ).toMatchObject({ site: 'yard', minutesPerUnit: 0, availableMinutesPerDay: 0 });
    const row = rowOf(
      packs({ kind: 'rhythm', lot: 13, everyDays: 7, from: undefined, to: undefined }),
      'supply',
      'packs',
    );
    expect(row.visitsPerUnit).toBeCloseTo(perUnit, 9);
    expect(row.capacityPerDay).toBeCloseTo(13 / 5 / perUnit, 9);
  });

  it('of a list all lots but the last have to last from the first date to the last', () => {
    // 10 + 20 packs over two weeks of five days.
    const dates = [
      { on: '2027-03-08', lot: 10 },
      { on: '2027-03-17', lot: 20 },
      { on: '2027-03-22', lot: 99 },
    ];
    expect(rowOf(packs({ kind: 'dates', dates }), 'supply', 'packs').capacityPerDay).toBeCloseTo(
      30 / 10 / perUnit,
      9,
    );
    expect(
      rowOf(packs({ kind: 'dates', dates: dates.slice(0, 1) }), 'supply', 'packs').capacityPerDay,
    ).toBeNull();
  });

  it('ordered by a level: at most level, safety, lot and what waits, once a lead time with its lateness', () => {
    // Level 4 + 1, lot 8; waiting at most 2 places x 2 and 1 x 1 packs: 18 in 10 days + 20 % of 5 = 11 days,
    // seven days for five.
    const reorder = {
      kind: 'reorder' as const,
      level: 4,
      safetyStock: 1,
      lot: 8,
      leadTime: minutes(10 * 1440),
    };
    expect(
      rowOf(packs(reorder, { chance: 0.2, by: minutes(5 * 1440) }), 'supply', 'packs').capacityPerDay,
    ).toBeCloseTo(((18 / 11) * 7) / 5 / perUnit, 9);
    expect(rowOf(packs({ ...reorder, leadTime: minutes(0) }), 'supply', 'packs').capacityPerDay).toBeNull();
  });

  it('goes through a kit to the feeders whose parts it takes', () => {
    // A unit takes 1 kit; 1.25 looms are used up for each, 2 hoses for each loom: benches of 480 min a day.
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(2),
        sites: {
          yard: site(
            { line: station(), kitting: station(), 'loom bench': station(), 'hose bench': station() },
            { calendar: 'days' },
          ),
        },
        feeders: {
          kits: feeder([
            step('wire', 'kitting', { work: minutes(40), parts: { looms: 1 } }),
            step('test', 'kitting', { work: minutes(10), fails: back(0.2, 'wire', { limit: 1000 }) }),
          ]),
          looms: feeder([step('make loom', 'loom bench', { work: minutes(60), parts: { hoses: 2 } })]),
          hoses: feeder([step('cut', 'hose bench', { work: minutes(24) })]),
        },
        route: [step('fit', 'line', { work: minutes(10), parts: { kits: 1 } })],
      }),
    );
    expect(rowOf(found, 'feeder', 'kits').capacityPerDay).toBeCloseTo(480 / (1.25 * 50), 8);
    expect(rowOf(found, 'feeder', 'looms').capacityPerDay).toBeCloseTo(480 / (1.25 * 60), 8);
    expect(rowOf(found, 'feeder', 'hoses')).toMatchObject({ name: 'hoses' });
    expect(rowOf(found, 'feeder', 'hoses').visitsPerUnit).toBeCloseTo(2.5, 9);
    expect(rowOf(found, 'feeder', 'hoses').capacityPerDay).toBeCloseTo(480 / (2.5 * 24), 8);
  });
});

describe('capacity: stations', () => {
  it('is available time over takt: 480 min a day and 120 min a unit make 4 a day a place', () => {
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(6),
        sites: { yard: site({ one: station(), two: station({ places: 3 }) }, { calendar: 'days' }) },
        route: [step('a', 'one', { work: minutes(120) }), step('b', 'two', { work: minutes(200) })],
      }),
    );
    expect(rowOf(found, 'station', 'one')).toMatchObject({
      site: 'yard',
      visitsPerUnit: 1,
      minutesPerUnit: 120,
      availableMinutesPerDay: 480,
      capacityPerDay: 4,
      load: 1.5,
    });
    expect(rowOf(found, 'station', 'two').capacityPerDay).toBeCloseTo((3 * 480) / 200, 10);
    expect(found).toMatchObject({ askedPerDay: 6, highestRatePerDay: 4, note: null });
    expect(found.bottleneck?.name).toBe('one');
  });

  it('gives an unattended oven 24 h and seven days in five', () => {
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(4),
        sites: {
          yard: site(
            { bay: station(), oven: station({ unattended: true, places: 2 }) },
            { calendar: 'days' },
          ),
        },
        route: [step('coat', 'bay', { work: minutes(60) }), step('bake', 'oven', { process: minutes(600) })],
      }),
    );
    expect(rowOf(found, 'station', 'oven').availableMinutesPerDay).toBeCloseTo((2 * 1440 * 7) / 5, 8);
  });

  it('counts passes, settling, option factors and the process as time on the place', () => {
    const found = table(
      scenario({
        calendars,
        programme: { ...ratePerDay(1), options: { colour: { red: 0.5, white: 0.5 } } },
        sites: {
          yard: site(
            { booth: station() },
            { calendar: 'days', crews: { painters: { headcount: 4, calendar: undefined } } },
          ),
        },
        route: [
          step('coat', 'booth', {
            crew: { painters: 2 },
            passes: { count: 2, work: minutes(40), settle: minutes(10) },
            process: minutes(30),
            workFactor: { colour: { red: 1.2 } },
          }),
        ],
      }),
    );
    // Work 2 * 40 * 1.1 = 88; on the place also two settles and the process: 138. The crew stays for one
    // settle: 98 each.
    expect(rowOf(found, 'station', 'booth').minutesPerUnit).toBeCloseTo(138, 10);
    expect(rowOf(found, 'crew', 'painters').minutesPerUnit).toBeCloseTo(196, 10);
    expect(rowOf(found, 'crew', 'painters').capacityPerDay).toBeCloseTo((4 * 480) / 196, 10);
  });

  it('adds a changeover where two units in a row differ: 1 - (0.7^2 + 0.2^2 + 0.1^2) = 0.46', () => {
    const found = table(
      scenario({
        calendars,
        programme: { ...ratePerDay(1), options: { colour: { red: 0.7, white: 0.2, lime: 0.1 } } },
        sites: {
          yard: site(
            {
              booth: station({
                changeover: { option: 'colour', work: minutes(50), fromTo: {}, batch: undefined },
              }),
            },
            { calendar: 'days', crews: { painters: { headcount: 1, calendar: undefined } } },
          ),
        },
        route: [
          step('mask', 'booth', { work: minutes(20), crew: { painters: 1 } }),
          step('coat', 'booth', { work: minutes(40), crew: { painters: 1 } }),
        ],
      }),
    );
    expect(rowOf(found, 'station', 'booth').minutesPerUnit).toBeCloseTo(60 + 23, 9);
    expect(rowOf(found, 'crew', 'painters').minutesPerUnit).toBeCloseTo(60 + 23, 9);
  });

  it('divides the minutes by the availability of what fails, also those of the crew that stays (Hopp & Spearman, ch. 8: te = t0 / A)', () => {
    const fails = (
      every: number,
      repair: number,
      by: 'operating time' | 'calendar time',
      hours?: string,
    ) => ({ every: minutes(every), by, repair: minutes(repair), hours });
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(4),
        sites: {
          yard: site(
            {
              press: station({ failures: [fails(744, 248, 'operating time')] }),
              both: station({
                failures: [fails(300, 30, 'operating time'), fails(600, 90, 'operating time')],
              }),
              clock: station({ failures: [fails(3600, 240, 'calendar time')] }),
              day: station({ failures: [fails(3600, 240, 'calendar time', 'days')] }),
            },
            { calendar: 'days', crews: { fitters: { headcount: 2, calendar: undefined } } },
          ),
        },
        route: [
          step('a', 'press', { work: minutes(15), crew: { fitters: 1 } }),
          step('b', 'both', { work: minutes(100) }),
          step('c', 'clock', { work: minutes(15) }),
          step('d', 'day', { work: minutes(15) }),
        ],
      }),
    );
    expect(rowOf(found, 'station', 'press').minutesPerUnit).toBeCloseTo(20, 10);
    expect(rowOf(found, 'crew', 'fitters').minutesPerUnit).toBeCloseTo(20, 10);
    expect(rowOf(found, 'station', 'both').minutesPerUnit).toBeCloseTo(100 * (1 + 0.1 + 0.15), 10);
    expect(rowOf(found, 'station', 'clock').minutesPerUnit).toBeCloseTo(15 / (60 / 64), 10);
    // Repairs on the day shift alone, 480 of each 2016 minutes by the clock: 4 h of repair take 16.8 h.
    expect(rowOf(found, 'station', 'day').minutesPerUnit).toBeCloseTo((15 * (60 + 16.8)) / 60, 10);
    expect(found.note).toContain('failures');
  });

  it('passes on one unit a takt at the stations of a pulse line', () => {
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(4),
        sites: { yard: site({ one: station(), two: station(), other: station() }, { calendar: 'days' }) },
        pulseLines: { line: { stations: ['one', 'two'], taktMin: 160 } },
        route: [
          step('a', 'one', { work: minutes(100) }),
          step('b', 'two', { work: minutes(240) }),
          step('c', 'other', { work: minutes(60) }),
        ],
      }),
    );
    expect(['one', 'two', 'other'].map((name) => rowOf(found, 'station', name).capacityPerDay)).toEqual([
      480 / 160,
      480 / 240,
      480 / 60,
    ]);
  });

  it('shares the minutes of a lot by the most units it can have', () => {
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(4),
        sites: {
          yard: site(
            {
              oven: station({ unattended: true, places: 4, lot: { least: 2, most: 4, longestWaitMin: 45 } }),
            },
            { calendar: 'days', crews: { bakers: { headcount: 1, calendar: undefined } } },
          ),
        },
        route: [step('bake', 'oven', { work: minutes(20), process: minutes(60), crew: { bakers: 1 } })],
      }),
    );
    const row = rowOf(found, 'station', 'oven');
    expect(row.minutesPerUnit).toBe(20);
    expect(row.capacityPerDay).toBeCloseTo((1440 * 7) / 5 / 20, 8);
    expect(rowOf(found, 'crew', 'bakers').minutesPerUnit).toBe(5);
  });

  it("loads Jackson's rework loop to 5 / 8: arrivals 0.5, back 0.2, rates 1", () => {
    // Jackson, J. R. (1957), Operations Research 5(4), 518-521. Everything in minutes, always open, arrivals
    // by chance.
    const found = table(
      scenario({
        programme: programme({
          quantity: undefined,
          lengthMin: 100_000,
          release: { kind: 'interval', interval: { kind: 'exponential', mean: 2 } },
        }),
        sites: { yard: site({ one: station({ buffer: undefined }), two: station({ buffer: undefined }) }) },
        route: [
          step('build', 'one', { work: { kind: 'exponential', mean: 1 } }),
          step('test', 'two', {
            work: { kind: 'exponential', mean: 1 },
            fails: back(0.2, 'build', { limit: 1_000_000 }),
          }),
        ],
      }),
    );
    expect(rowOf(found, 'station', 'one').load).toBeCloseTo(5 / 8, 8);
    expect(rowOf(found, 'station', 'two').load).toBeCloseTo(5 / 8, 8);
    expect(found.askedPerDay).toBeCloseTo(720, 8);
  });

  it('counts expected repairs for place and crew', () => {
    const found = table(
      scenario({
        calendars,
        programme: ratePerDay(4),
        defects: { dirt: { note: undefined } },
        sites: {
          yard: site(
            { bay: station(), look: station() },
            { calendar: 'days', crews: { inspectors: { headcount: 2, calendar: undefined } } },
          ),
        },
        route: [
          step('coat', 'bay', { work: minutes(60), creates: { dirt: chance(0.2) } }),
          step('inspect', 'look', {
            work: minutes(20),
            crew: { inspectors: 1 },
            finds: { dirt: repair(0.5, minutes(30)) },
          }),
        ],
      }),
    );
    expect(rowOf(found, 'station', 'look').minutesPerUnit).toBeCloseTo(23, 10);
    expect(rowOf(found, 'crew', 'inspectors').minutesPerUnit).toBeCloseTo(23, 10);
  });
});

describe('capacity: lanes', () => {
  const lines = (more: Parameters<typeof lane>[2]) =>
    table(
      scenario({
        calendars,
        programme: ratePerDay(2),
        sites: {
          here: site({ a: station() }, { calendar: 'days' }),
          there: site({ b: station() }, { calendar: 'days' }),
        },
        lanes: {
          road: lane('here', 'there', {
            trucks: 2,
            capacity: 3,
            load: minutes(30),
            drive: minutes(120),
            unload: minutes(30),
            return: minutes(120),
            arrivalBank: 2,
            ...more,
          }),
        },
        route: [
          step('first', 'a', { work: minutes(10) }),
          { kind: 'lane', lane: 'road', when: {} },
          step('last', 'b', { work: minutes(10) }),
        ],
      }),
    );

  it('is the full load over the round trip in the driving hours', () => {
    // 300 min for 3 units is 100 a unit; two trucks have 960 min a day.
    expect(rowOf(lines({ hours: 'days' }), 'lane', 'road')).toMatchObject({
      site: 'here to there',
      minutesPerUnit: 100,
      availableMinutesPerDay: 960,
      capacityPerDay: 9.6,
    });
    expect(rowOf(lines({}), 'lane', 'road').capacityPerDay).toBeCloseTo((2 * 1440 * 7) / 5 / 100, 8);
  });

  it('is no more than the timetable takes away, with as many trucks at a time as there are docks', () => {
    // Two departures a day of trucks for three; those of 06:00 are back at 11:00.
    const leaves = { kind: 'timetable', atMin: [360, 660] } as const;
    expect(rowOf(lines({ leaves }), 'lane', 'road').capacityPerDay).toBeCloseTo(12, 8);
    expect(
      rowOf(lines({ leaves, docks: { from: 1, to: undefined } }), 'lane', 'road').capacityPerDay,
    ).toBeCloseTo(6, 8);
  });

  it('counts a departure only where a truck is back for it', () => {
    // Those of 13:00 are unloaded the next morning, from 06:00, and miss the departure of 08:00 from then on.
    const leaves = { kind: 'timetable', atMin: [480, 780] } as const;
    expect(rowOf(lines({ leaves }), 'lane', 'road').capacityPerDay).toBeCloseTo(6, 1);
  });

  it('takes no more at once than its bank holds', () => {
    const leaves = { kind: 'timetable', atMin: [360, 660] } as const;
    expect(rowOf(lines({ leaves, bank: 1 }), 'lane', 'road').capacityPerDay).toBeCloseTo(2, 8);
    expect(rowOf(lines({ leaves, bank: 4 }), 'lane', 'road').capacityPerDay).toBeCloseTo(8, 8);
    // A load of two over the round trip of 300 min.
    const wait = { kind: 'full or wait', longestWaitMin: 240 } as const;
    expect(rowOf(lines({ leaves: wait, bank: 2, hours: 'days' }), 'lane', 'road').capacityPerDay).toBeCloseTo(
      6.4,
      8,
    );
  });

  it('has no row for the bank after it', () => {
    expect(lines({}).rows.map((row) => `${row.kind} ${row.name}`)).toEqual([
      'station a',
      'station b',
      'lane road',
    ]);
  });
});

describe('capacity: feeders', () => {
  const found = table(
    scenario({
      calendars,
      programme: ratePerDay(2),
      defects: { crack: { note: undefined } },
      sites: {
        yard: site(
          { strip: station(), fit: station(), bench: station(), rig: station({ places: 2 }) },
          { calendar: 'days', crews: { fitters: { headcount: 3, calendar: undefined } } },
        ),
      },
      feeders: {
        axles: feeder([
          step('weld axle', 'bench', {
            work: minutes(45),
            crew: { fitters: 2 },
            creates: { crack: chance(0.2) },
          }),
          step('check axle', 'rig', { work: minutes(60), finds: { crack: scrap(0.5) } }),
        ]),
        doors: feeder([step('trim doors', 'rig', { work: minutes(80) })], { kind: 'own', target: 0 }),
      },
      route: [
        step('take off', 'strip', { work: minutes(10), takesOff: ['doors'] }),
        step('put on', 'fit', { work: minutes(10), parts: { axles: 2, doors: 'own' } }),
      ],
    }),
  );

  it('begins more sub-assemblies than are needed where some are scrapped', () => {
    // Two axles a unit, a tenth scrapped: 2 / 0.9 begun.
    expect(rowOf(found, 'feeder', 'axles').visitsPerUnit).toBeCloseTo(2 / 0.9, 9);
    expect(rowOf(found, 'station', 'bench').minutesPerUnit).toBeCloseTo(100, 8);
    expect(rowOf(found, 'station', 'bench').capacityPerDay).toBeCloseTo(4.8, 8);
  });

  it('are as fast as their slowest station or crew, in sets a day', () => {
    // Bench: 480 / 100. Fitters: 3 * 480 / 200 = 7.2. Rig for axles alone: 960 / (60 * 2 / 0.9) = 7.2.
    expect(rowOf(found, 'feeder', 'axles').capacityPerDay).toBeCloseTo(4.8, 8);
    expect(rowOf(found, 'feeder', 'doors').capacityPerDay).toBeCloseTo(960 / 80, 8);
  });

  it('share a station: its row counts both, and is the bottleneck before the feeder', () => {
    expect(rowOf(found, 'station', 'rig').minutesPerUnit).toBeCloseTo(133.3333333 + 80, 5);
    expect(rowOf(found, 'station', 'rig').capacityPerDay).toBeCloseTo(4.5, 6);
    expect(found.bottleneck).toMatchObject({ kind: 'station', name: 'rig' });
  });
});

describe('capacity: carriers and teams', () => {
  const found = table(
    scenario({
      calendars,
      programme: { ...ratePerDay(2), options: { ladder: { yes: 0.25, no: 0.75 } } },
      sites: {
        here: site(
          { a: station(), b: station({ unattended: true }) },
          { calendar: 'days', crews: { fitters: { headcount: 4, calendar: undefined } } },
        ),
        there: site({ c: station() }, { calendar: 'days' }),
      },
      lanes: {
        road: lane('here', 'there', {
          load: minutes(10),
          drive: minutes(60),
          unload: minutes(20),
          return: minutes(500),
        }),
      },
      carriers: {
        dollies: { count: 3, from: 'set up', to: 'receive', return: minutes(30), hours: undefined },
        jigs: { count: 1, from: 'ladder', to: 'ladder', return: minutes(40), hours: undefined },
      },
      teams: { pair: { crew: 'fitters', people: 2, from: 'set up', to: 'cure' } },
      route: [
        step('set up', 'a', { work: minutes(50), crew: { fitters: 1 } }),
        step('ladder', 'a', { work: minutes(20), when: { ladder: ['yes'] } }),
        step('cure', 'b', { work: minutes(5), process: minutes(600) }),
        { kind: 'lane', lane: 'road', when: {} },
        step('receive', 'c', { work: minutes(15) }),
      ],
    }),
  );

  it('counts for a carrier the steps, the trips and the way back, by the clock', () => {
    // 50 + 20/4 + 605 + 90 + 15 + 30; 24 h on seven days in five.
    expect(rowOf(found, 'carrier', 'dollies')).toMatchObject({
      site: 'here',
      visitsPerUnit: 1,
      minutesPerUnit: 795,
    });
    expect(rowOf(found, 'carrier', 'dollies').capacityPerDay).toBeCloseTo((3 * 1440 * 7) / 5 / 795, 8);
    // A quarter of the units: 20 + 40 minutes.
    expect(rowOf(found, 'carrier', 'jigs')).toMatchObject({ visitsPerUnit: 0.25, minutesPerUnit: 15 });
  });

  it('counts for the people of a team the work of its steps', () => {
    // Beside the crew of the first step, 50: two people for 50 + 5 + 5. Claimed by the step and by the team.
    expect(rowOf(found, 'crew', 'fitters')).toMatchObject({ visitsPerUnit: 2, minutesPerUnit: 50 + 2 * 60 });
  });

  it('adds the waits of a unit alone: nights and days off, the timetable, the queue behind a full truck', () => {
    // Four units a day, 480 of 1440 min a day worked, all seven days. From the middle of the shift's start on:
    // work of 60 min, evenly begun, 60 x 3 by the clock, its end evenly over the shift (06:00-14:00); to the
    // departure at 20:00, 14 to 6 h, 10 on average; drive 4 h, at 00:00; at 06:00 the four of the truck are
    // worked on one after another, 60 min each: 1.5 others first, then its own.
    const week: CalendarSpec = {
      ...dayShift,
      hours: [{ startMin: 360, endMin: 840 }],
      breaks: [],
      on: [1, 2, 3, 4, 5, 6, 7],
    };
    const late = table(
      scenario({
        calendars: { days: week },
        programme: ratePerDay(4),
        sites: {
          here: site({ a: station() }, { calendar: 'days' }),
          there: site({ c: station() }, { calendar: 'days' }),
        },
        lanes: {
          road: lane('here', 'there', {
            capacity: 6,
            drive: minutes(240),
            leaves: { kind: 'timetable', atMin: [1200] },
          }),
        },
        carriers: { carts: { count: 8, from: 'make', to: 'fit', return: minutes(0), hours: undefined } },
        route: [
          step('make', 'a', { work: minutes(60) }),
          { kind: 'lane', lane: 'road', when: {} },
          step('fit', 'c', { work: minutes(60) }),
        ],
      }),
    );
    const { load, loadAlone, minutesPerUnit } = rowOf(late, 'carrier', 'carts'),
      alone = 180 + 600 + 240 + 360 + 90 + 60;
    expect(minutesPerUnit).toBe(60 + 240 + 60);
    expect(load).toBeCloseTo((4 * 360) / (8 * 1440), 8);
    expect(loadAlone! / ((4 * alone) / (8 * 1440))).toBeCloseTo(1, 2);
    expect(rowOf(late, 'station', 'a').loadAlone).toBeNull();
  });

  it('counts all of a lot for a carrier that goes through it, and a quarter of it for the oven', () => {
    const oven = table(
      scenario({
        programme: ratePerDay(4),
        sites: {
          hall: site({
            a: station(),
            oven: station({ places: 4, lot: { least: 1, most: 4, longestWaitMin: 0 } }),
            c: station(),
          }),
        },
        carriers: { carts: { count: 8, from: 'a', to: 'c', return: minutes(0), hours: undefined } },
        route: [
          step('a', 'a', { work: minutes(10) }),
          step('bake', 'oven', { process: minutes(120) }),
          step('c', 'c', { work: minutes(10) }),
        ],
      }),
    );
    expect(rowOf(oven, 'carrier', 'carts').minutesPerUnit).toBe(10 + 120 + 10);
    expect(rowOf(oven, 'station', 'oven').minutesPerUnit).toBe(30);
  });

  it('counts steps side by side once for a team that stays over them and beyond', () => {
    // The longest of 90 and 60, then 10.
    const side = table(
      scenario({
        programme: ratePerDay(2),
        sites: {
          hall: site(
            { stall: station(), gate: station() },
            { crews: { fitters: { headcount: 4, calendar: undefined } } },
          ),
        },
        teams: { pair: { crew: 'fitters', people: 2, from: 'dash', to: 'leave' } },
        route: [
          step('dash / cables', 'stall', {
            sideBySide: [
              step('dash', 'stall', { work: minutes(90) }),
              step('cables', 'stall', { work: minutes(60) }),
            ],
          }),
          step('leave', 'gate', { work: minutes(10) }),
        ],
      }),
    );
    expect(rowOf(side, 'crew', 'fitters').minutesPerUnit).toBe(2 * (90 + 10));
  });

  it('is an upper limit that closed networks do not reach: five carts, three exponential stations', () => {
    // 5 / 2.3 = 2.17 an hour by the carts alone, 1 by the slowest station; 0.874676 by mean-value analysis
    // (tests/statistics/carriers.test.ts).
    const hour = minutes(60),
      network = table(
        scenario({
          programme: programme({ release: { kind: 'saturated' }, quantity: 100 }),
          sites: { hall: site({ a: station(), b: station(), c: station() }) },
          carriers: { carts: { count: 5, from: 'a', to: 'c', return: minutes(0), hours: undefined } },
          route: [
            step('a', 'a', { work: hour }),
            step('b', 'b', { work: minutes(48) }),
            step('c', 'c', { work: minutes(30) }),
          ],
        }),
      );
    expect(rowOf(network, 'carrier', 'carts').capacityPerDay! / 24).toBeCloseTo(5 / 2.3, 10);
    expect(network.highestRatePerDay).toBeCloseTo(24, 10);
  });
});

describe('capacity: steps side by side', () => {
  const stall = (people: number | undefined) =>
    table(
      scenario({
        calendars,
        programme: { ...ratePerDay(2), options: { ladder: { yes: 0.5, no: 0.5 } } },
        sites: {
          hall: site(
            { stall: station({ people }), gate: station() },
            {
              calendar: 'days',
              crews: {
                fitters: { headcount: 4, calendar: undefined },
                electricians: { headcount: 3, calendar: undefined },
              },
            },
          ),
        },
        teams: { pair: { crew: 'fitters', people: 1, from: 'dash', to: 'rack' } },
        route: [
          step('dash / cables / rack', 'stall', {
            sideBySide: [
              step('dash', 'stall', { work: minutes(90), process: minutes(10), crew: { fitters: 2 } }),
              step('cables', 'stall', { work: minutes(60), crew: { electricians: 3 } }),
              step('rack', 'stall', { work: minutes(80), crew: { fitters: 2 }, when: { ladder: ['yes'] } }),
            ],
          }),
          step('leave', 'gate', { work: minutes(10) }),
        ],
      }),
    );

  it('keep the place for the longest of them, and their crews each for its own time', () => {
    expect(rowOf(stall(undefined), 'station', 'stall')).toMatchObject({
      visitsPerUnit: 1,
      minutesPerUnit: 100,
    });
    // 2 x 90, half the units 2 x 80, and one of the team for the 90 of the longest.
    expect(rowOf(stall(undefined), 'crew', 'fitters').minutesPerUnit).toBeCloseTo(180 + 80 + 90, 10);
    expect(rowOf(stall(undefined), 'crew', 'electricians')).toMatchObject({
      visitsPerUnit: 1,
      minutesPerUnit: 180,
    });
  });

  it('keep it for as long as so many people need who can be there at once', () => {
    // 2 x 100 + 3 x 60 + half of 2 x 80 = 460 person-minutes; four at once.
    expect(rowOf(stall(4), 'station', 'stall').minutesPerUnit).toBeCloseTo(115, 10);
  });
});

describe('capacity: options', () => {
  it('says so where there are too many combinations, and agrees with the exact way where options do not meet', () => {
    const options = Object.fromEntries(
      Array.from({ length: 9 }, (_, i) => [`option ${i}`, { yes: 0.3, no: 0.7 }]),
    );
    const build = (count: number): CapacityTable =>
      table(
        scenario({
          calendars,
          programme: {
            ...ratePerDay(1),
            options: Object.fromEntries(Object.entries(options).slice(0, count)),
          },
          sites: { yard: site({ bay: station() }, { calendar: 'days' }) },
          route: Array.from({ length: count }, (_, i) =>
            step(`fit ${i}`, 'bay', { work: minutes(10), when: { [`option ${i}`]: ['yes'] } }),
          ),
        }),
      );
    expect(build(8)).toMatchObject({ note: null });
    expect(build(9).note).toMatch(/more than 256 combinations/);
    expect(rowOf(build(8), 'station', 'bay').minutesPerUnit).toBeCloseTo(24, 9);
    expect(rowOf(build(9), 'station', 'bay').minutesPerUnit).toBeCloseTo(27, 9);
  });
});

describe('capacity: speed', () => {
  it('takes less than 50 ms for 60 stations with loops and options', () => {
    const stations = Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`bay ${i}`, station()]));
    const kinds = Array.from({ length: 12 }, (_, i) => `kind ${i}`);
    const route = Array.from({ length: 60 }, (_, i) =>
      step(`step ${i}`, `bay ${i}`, {
        work: minutes(100),
        creates: i % 5 === 0 ? { [kinds[i / 5]]: chance(0.05) } : {},
        finds: i % 5 === 4 ? { [kinds[(i - 4) / 5]]: back(0.9, `step ${i - 4}`) } : {},
        when: i % 7 === 3 ? { stripe: ['yes'] } : {},
        workFactor: i % 4 === 0 ? { colour: { red: 1.2 } } : {},
      }),
    );
    const large = scenario({
      calendars,
      sites: { yard: site(stations, { calendar: 'days' }) },
      route,
      defects: Object.fromEntries(kinds.map((kind) => [kind, { note: undefined }])),
      programme: {
        ...ratePerDay(4),
        options: { colour: { red: 0.5, white: 0.3, lime: 0.2 }, stripe: { yes: 0.35, no: 0.65 } },
      },
    });
    const model = compile(large);
    const took = Array.from({ length: 4 }, () => {
      const before = performance.now();
      capacity(model, large);
      return performance.now() - before;
    });
    // Best of four: other work on the machine must not fail the test.
    expect(Math.min(...took)).toBeLessThan(50);
  });
});
