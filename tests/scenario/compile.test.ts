import { describe, expect, it } from 'vitest';
import { LEAVE_FULL_OR_WAIT, LEAVE_TIMETABLE } from '../../src/flow/model/lanes.js';
import { type Model, UNLIMITED } from '../../src/flow/model/model.js';
import { RELEASE_ARRIVALS } from '../../src/flow/model/programme.js';
import { REPAIR, SCRAP, SEND_BACK } from '../../src/flow/model/quality.js';
import { REWORK_BOTH, REWORK_ONLY } from '../../src/flow/model/steps.js';
import { compile } from '../../src/scenario/compile.js';
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
} from './compile-scenario.js';

const late = { ...dayShift, hours: [{ startMin: 14 * 60, endMin: 22 * 60 }] };
const early = { ...dayShift, hours: [{ startMin: 6 * 60, endMin: 10 * 60 }] };

/** A small vehicle over two plants: paint with defects, a feeder of each kind, a lane with a bank. */
const built = scenario({
  calendars: { days: dayShift, early, late, 'days again': dayShift },
  sites: {
    coachworks: site(
      {
        'prime booth': station({
          buffer: 2,
          reworkBuffer: 'unlimited',
          changeover: { option: 'colour', work: minutes(15), fromTo: {}, batch: undefined },
        }),
        'bake oven': station({ places: 4, unattended: true, lot: { least: 2, most: 4, longestWaitMin: 45 } }),
        'inspection bay': station({ buffer: undefined, reworkBuffer: 1 }),
        'strip bay': station(),
      },
      {
        calendar: 'days',
        crews: {
          painters: { headcount: 6, calendar: 'early' },
          inspectors: { headcount: 1, calendar: undefined },
        },
      },
    ),
    'final plant': site(
      { 'door station': station({ calendar: 'days again' }), 'axle bench': station() },
      { calendar: 'late', crews: { painters: { headcount: 2, calendar: undefined } } },
    ),
  },
  feeders: {
    axles: feeder([step('build axle', 'axle bench', { work: minutes(120) })], { target: 3, atStart: 2 }),
    doors: feeder([step('trim doors', 'axle bench', { work: minutes(60), creates: { dirt: chance(0.1) } })], {
      kind: 'own',
      target: 0,
    }),
  },
  lanes: {
    road: lane('coachworks', 'final plant', {
      trucks: 2,
      capacity: 3,
      drive: minutes(210),
      hours: 'days',
      arrivalBank: 2,
      bank: 4,
      docks: { from: 1, to: undefined },
      leaves: { kind: 'timetable', atMin: [780, 480] },
    }),
  },
  defects: { dirt: { note: undefined }, runs: { note: undefined } },
  route: [
    step('prime', 'prime booth', {
      crew: { painters: 2 },
      passes: { count: 2, work: minutes(40), settle: minutes(8) },
      workFactor: { colour: { red: 1.2 } },
      creates: {
        dirt: chance(0.06),
        runs: chance(0.04, [{ option: 'colour', value: 'lime', chance: 0.07 }]),
      },
    }),
    step('bake', 'bake oven', { process: minutes(50), creates: { dirt: chance(0.01) } }),
    step('touch up', 'bake oven', { work: minutes(5), rework: 'only' }),
    step('inspect', 'inspection bay', {
      crew: { inspectors: 1 },
      work: minutes(20),
      sample: { oneIn: 5, by: 'random' },
      finds: { dirt: repair(0.85, minutes(25)), runs: back(0.9, 'prime', { limit: 3, atLimit: 'scrap' }) },
      fails: scrap(0.01),
    }),
    step('strip', 'strip bay', {
      work: minutes(30),
      takesOff: ['doors'],
      when: { colour: ['red', 'lime'], stripe: ['yes'] },
    }),
    { kind: 'lane', lane: 'road', when: {} },
    step('fit doors', 'door station', {
      crew: { painters: 1 },
      parts: { axles: 2, doors: 'own' },
      work: minutes(45),
      oneShift: true,
      sample: { oneIn: 1, by: 'turn' },
    }),
  ],
  programme: programme({
    options: { colour: { red: 0.7, white: 0.2, lime: 0.1 }, stripe: { yes: 0.35, no: 0.65 } },
  }),
});
const model = compile(built);
const { stations, steps, resources, routes, slots, thens, lanes, chances } = model;
const drawName = (id: number): string | undefined => (id < 0 ? undefined : model.draws[id].name);
const row = (start: Int32Array, step: string): number[] => {
  const s = steps.names.indexOf(step);
  return Array.from({ length: start[s + 1] - start[s] }, (_, i) => start[s] + i);
};
const of = (column: Int32Array | Uint8Array, names: readonly string[], name: string): number =>
  column[names.indexOf(name)];

describe('compile: stations', () => {
  it('numbers stations site by site and puts arrival banks last', () => {
    expect(stations.names).toEqual([
      'prime booth',
      'bake oven',
      'inspection bay',
      'strip bay',
      'door station',
      'axle bench',
      'road: arrival bank',
    ]);
    expect([...stations.site]).toEqual([0, 0, 0, 0, 1, 1, 1]);
    expect([...stations.isBank]).toEqual([0, 0, 0, 0, 0, 0, 1]);
    expect([...stations.places]).toEqual([1, 4, 1, 1, 1, 1, 2]);
  });

  it('tells shared, own and unlimited spaces apart', () => {
    expect([...stations.buffer]).toEqual([2, 0, UNLIMITED, 0, 0, 0, 0]);
    expect([...stations.reworkBuffer]).toEqual([UNLIMITED, -1, 1, -1, -1, -1, -1]);
  });

  it('keeps lots and changeovers', () => {
    expect([stations.lotLeast[1], stations.lotMost[1], stations.lotWait[1]]).toEqual([2, 4, 45]);
    expect(stations.lotMost[0]).toBe(0);
    expect(stations.changeoverOption[0]).toBe(0);
    const usual = 'prime booth/changeover';
    expect([...stations.changeoverStart]).toEqual([0, 9, 9, 9, 9, 9, 9, 9]);
    expect(Array.from(stations.changeoverDraw, drawName)).toEqual([
      undefined,
      usual,
      usual,
      usual,
      undefined,
      usual,
      usual,
      usual,
      undefined,
    ]);
    expect([stations.batchMost[0], stations.batchWait[0]]).toEqual([0, Infinity]);
  });
});

describe('compile: calendars', () => {
  it('shares one id between calendars with the same windows', () => {
    expect(of(stations.calendar, stations.names, 'door station')).toBe(
      of(stations.calendar, stations.names, 'strip bay'),
    );
    // Days, early, late, and days with late. What days and early have in common is early.
    expect(model.calendars).toHaveLength(4);
    expect(of(steps.workCalendar, steps.names, 'prime')).toBe(resources.calendar[0]);
  });

  it('works where station and crew are both on shift', () => {
    const of0 = (name: string): number => steps.workCalendar[steps.names.indexOf(name)];
    const first = (id: number): number[] => [model.calendars[id].start[0], model.calendars[id].end[0]];
    expect(first(of0('prime'))).toEqual([360, 600]);
    expect(first(of0('inspect'))).toEqual([360, 720]);
    // Day shift to 14:30, late shift from 14:00: half an hour in common.
    expect(first(of0('fit doors'))).toEqual([840, 870]);
    expect(of(stations.calendar, stations.names, 'bake oven')).toBe(-1);
    expect(of0('touch up')).toBe(of(stations.calendar, stations.names, 'strip bay'));
    expect(of0('road')).toBe(-1);
  });
});

describe('compile: routes, feeders and needs', () => {
  it('lays the unit route first and feeders after it, with a wait in the bank behind the lane', () => {
    expect(steps.names).toEqual([
      'prime',
      'bake',
      'touch up',
      'inspect',
      'strip',
      'road',
      'road: arrival bank',
      'fit doors',
      'build axle',
      'trim doors',
    ]);
    expect([...routes.firstStep]).toEqual([0, 8, 9, 10]);
    expect([...routes.own]).toEqual([0, 0, 1]);
    expect([...routes.target]).toEqual([0, 3, 0]);
    expect([...steps.lane].slice(4, 8)).toEqual([-1, 0, -1, -1]);
    expect([...steps.station].slice(4, 8)).toEqual([3, -1, 6, 4]);
  });

  it('numbers crews by site and then stocks', () => {
    expect(resources.names).toEqual(['painters', 'inspectors', 'painters', 'axles']);
    expect([...resources.site]).toEqual([0, 0, 1, 1]);
    expect([...resources.amount]).toEqual([6, 1, 2, 2]);
    expect(resources.crews).toBe(3);
    expect([...routes.stock]).toEqual([-1, 3, -1]);
    expect(resources.calendar[3]).toBe(-1);
  });

  it("claims the crew of the station's own site, stock in numbers, own parts by route", () => {
    const needs = row(steps.needStart, 'fit doors').map((i) => [steps.needResource[i], steps.needAmount[i]]);
    expect(needs).toEqual([
      [2, 1],
      [3, 2],
    ]);
    expect(row(steps.ownStart, 'fit doors').map((i) => steps.ownRoute[i])).toEqual([2]);
    expect(row(steps.offStart, 'strip').map((i) => steps.offRoute[i])).toEqual([2]);
  });
});

describe('compile: steps', () => {
  it('masks the values of each condition', () => {
    expect(row(steps.whenStart, 'strip').map((i) => [steps.whenOption[i], steps.whenMask[i]])).toEqual([
      [0, 0b101],
      [1, 0b1],
    ]);
  });

  it('lists a factor for every value, 1 where none is given', () => {
    const [i] = row(steps.factorStart, 'prime');
    expect(steps.factorOption[i]).toBe(0);
    expect([...steps.factorTable.slice(steps.factorOffset[i], steps.factorOffset[i] + 3)]).toEqual([
      1.2, 1, 1,
    ]);
  });

  it('reads passes, process, rework words, one-shift work and sampling', () => {
    expect([steps.passes[0], drawName(steps.workDraw[0]), drawName(steps.settleDraw[0])]).toEqual([
      2,
      'prime/work',
      'prime/settle',
    ]);
    expect([steps.workDraw[1], drawName(steps.processDraw[1])]).toEqual([-1, 'bake/process']);
    expect([steps.rework[0], steps.rework[2]]).toEqual([REWORK_BOTH, REWORK_ONLY]);
    expect([steps.oneShift[0], steps.oneShift[7]]).toEqual([0, 1]);
    expect([steps.sampleN[3], drawName(steps.sampleDraw[3])]).toEqual([5, 'inspect/sample']);
    expect([steps.sampleN[7], steps.sampleDraw[7]]).toEqual([0, -1]);
  });
});

describe('compile: defects', () => {
  it('gives each kind a slot for each step that creates it', () => {
    expect(slots.names).toEqual([
      'dirt from prime',
      'runs from prime',
      'dirt from bake',
      'dirt from trim doors',
    ]);
    expect([...slots.kind]).toEqual([0, 1, 0, 0]);
    expect([...slots.step]).toEqual([0, 0, 1, 9]);
  });

  it('finds every slot of the kind on its own route and on those that join it, one consequence for all of them', () => {
    const finds = row(steps.findStart, 'inspect');
    expect(finds.map((i) => steps.findSlot[i])).toEqual([0, 2, 3, 1, -1]);
    expect(finds.map((i) => drawName(steps.findDraw[i]))).toEqual([
      'inspect/finds dirt from prime',
      'inspect/finds dirt from bake',
      'inspect/finds dirt from trim doors',
      'inspect/finds runs from prime',
      'inspect/fails',
    ]);
    const then = finds.map((i) => steps.findThen[i]);
    expect(then.slice(1, 3)).toEqual([then[0], then[0]]);
    expect(then.slice(2).map((t) => thens.kind[t])).toEqual([REPAIR, SEND_BACK, SCRAP]);
    expect([thens.target[then[3]], thens.limit[then[3]], thens.scrapAtLimit[then[3]]]).toEqual([0, 3, 1]);
    expect(thens.target[then[0]]).toBe(-1);
    expect(drawName(model.repairTimes.usual[thens.repairTime[then[0]]])).toBe('inspect/repair dirt');
  });

  it('keeps chances by option', () => {
    const create = row(steps.createStart, 'prime')[1];
    const c = steps.createChance[create];
    expect(chances.base[c]).toBe(0.04);
    const rows = Array.from(
      { length: chances.start[c + 1] - chances.start[c] },
      (_, i) => chances.start[c] + i,
    );
    expect(rows.map((i) => [chances.option[i], chances.value[i], chances.chance[i]])).toEqual([[0, 2, 0.07]]);
  });
});

describe('compile: lanes', () => {
  it('makes a draw of each part of a trip that takes time', () => {
    expect([
      lanes.loadDraw[0],
      drawName(lanes.driveDraw[0]),
      lanes.unloadDraw[0],
      lanes.returnDraw[0],
    ]).toEqual([-1, 'road/drive', -1, -1]);
    expect([lanes.trucks[0], lanes.capacity[0], lanes.bank[0], lanes.docksFrom[0], lanes.docksTo[0]]).toEqual(
      [2, 3, 4, 1, UNLIMITED],
    );
  });

  it('lists departures on the working days of the site of departure, sorted', () => {
    expect(lanes.rule[0]).toBe(LEAVE_TIMETABLE);
    expect([...lanes.timetable[0].slice(0, 4)]).toEqual([480, 780, 1440 + 480, 1440 + 780]);
    // After Friday 13:00 comes Monday 08:00.
    expect([...lanes.timetable[0].slice(9, 11)]).toEqual([4 * 1440 + 780, 7 * 1440 + 480]);
    expect(lanes.timetable[0].at(-1)).toBeLessThanOrEqual(model.horizon);
  });

  it('keeps the longest wait of a lane that leaves when full or after it', () => {
    const waiting = compile({
      ...built,
      lanes: { road: { ...built.lanes['road'], leaves: { kind: 'full or wait', longestWaitMin: 240 } } },
    }).lanes;
    expect([waiting.rule[0], waiting.wait[0], waiting.timetable[0].length]).toEqual([
      LEAVE_FULL_OR_WAIT,
      240,
      0,
    ]);
  });
});

describe('compile: draws and options', () => {
  it('gives option o the draw o and every stream a name of its own', () => {
    expect(model.draws.slice(0, 2).map((draw) => draw.name)).toEqual(['option/colour', 'option/stripe']);
    expect(new Set(model.draws.map((draw) => draw.name)).size).toBe(model.draws.length);
    expect(model.draws[0].distribution).toEqual({ kind: 'uniform', low: 0, high: 1 });
  });

  it('ends cumulative chances at exactly 1', () => {
    const [colour] = model.options;
    expect(colour.values).toEqual(['red', 'white', 'lime']);
    expect(colour.cumulative[0]).toBeCloseTo(0.7, 12);
    expect(colour.cumulative[2]).toBe(1);
  });

  it('draws intervals where units arrive by chance', () => {
    const { programme: p, draws } = compile({
      ...built,
      programme: programme({
        options: built.programme.options,
        release: { kind: 'interval', interval: { kind: 'exponential', mean: 120 } },
      }),
    });
    expect(p.release).toBe(RELEASE_ARRIVALS);
    expect(draws[p.intervalDraw].name).toBe('programme/interval');
    expect(p.times).toHaveLength(0);
  });
});

describe('compile: speed', () => {
  it('takes well under 150 ms for 45 stations over two years', () => {
    const zones = ['Europe/Oslo', 'America/Chicago', 'Europe/Lisbon'];
    const shifts = {
      ...dayShift,
      breaks: [
        { startMin: 570, endMin: 585 },
        { startMin: 720, endMin: 750 },
      ],
      holidays: [{ from: '2027-07-12', to: '2027-07-30' }],
    };
    const sites = Object.fromEntries(
      zones.map((zone) => [
        zone,
        site(
          Object.fromEntries(
            Array.from({ length: 15 }, (_, i) => [
              `${zone} ${i}`,
              station({ calendar: i % 3 === 0 ? 'late' : undefined }),
            ]),
          ),
          {
            zone,
            calendar: 'days',
            crews: { a: { headcount: 4, calendar: undefined }, b: { headcount: 4, calendar: 'early' } },
          },
        ),
      ]),
    );
    const route = zones.flatMap((zone) =>
      Array.from({ length: 15 }, (_, i) =>
        step(`${zone} step ${i}`, `${zone} ${i}`, {
          work: minutes(60),
          crew: i % 2 ? { a: 1, b: 1 } : { a: 1 },
        }),
      ),
    );
    const large = scenario({
      calendars: { days: shifts, early, late },
      sites,
      route,
      programme: programme({
        quantity: 1000,
        release: { kind: 'rate', phases: [{ from: '2027-03-01', perDay: 4 }] },
      }),
    });
    const took: number[] = [];
    let last: Model | undefined;
    for (let i = 0; i < 3; i++) {
      const before = performance.now();
      last = compile(large);
      took.push(performance.now() - before);
    }
    expect(last?.programme.times).toHaveLength(1000);
    expect(last?.horizon).toBeGreaterThan(700 * 1440);
    // Best of three: other work on the machine must not fail the test.
    expect(Math.min(...took)).toBeLessThan(150);
  });
});
