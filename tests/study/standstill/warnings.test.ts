import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { sayPath } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import { standstillWarnings } from '../../../src/study/standstill/warnings.js';

function warned(yaml: string, readFile: (name: string) => string = () => '') {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', readFile);
  expect(problems).toBeUndefined();
  return standstillWarnings(compile(scenario!), scenario!).map(({ path, ...rest }) => ({
    path: sayPath(path),
    ...rest,
  }));
}
const paths = (yaml: string): string[] => warned(yaml).map(({ path }) => path);

const back = (weld: string, check = '', quantity = 50): string => `
scenario: sent back
programme: { arrivals: 10 min, quantity: ${quantity} }
sites: { hall: { stations: { yard: { buffer: unlimited }, weld: { ${weld} }, check: { ${check} } } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 10 min, creates: { gap: 50 % } }
  - { step: check, at: check, work: 10 min, finds: { gap: { chance: 90 %, back to: weld, limit: 2 } } }
`;

describe('a send-back into a full line', () => {
  it('is told with the loop and what rules it out', () => {
    expect(warned(back('buffer: 1'))).toEqual([
      {
        path: 'route[2].finds.gap.back to',
        text: 'units sent back to weld may stand for good: check may wait for weld, weld for check',
        remedy: 'a rework buffer at weld',
      },
    ]);
  });

  it.each([
    ['a space for rework there', back('buffer: 1, rework buffer: 1')],
    ['a buffer without a limit there', back('buffer: unlimited')],
    ['one without a limit on the way', back('buffer: 1', 'buffer: unlimited')],
    ['fewer units than the loop has places and spaces', back('buffer: 1', '', 2)],
    ['fewer carriers than it has', `${back('')}carriers: { dolly: { count: 1, from: put down, to: check } }`],
    ['a find that never is one', back('buffer: 1').replace('90 %', '0 %')],
  ])('is none with %s', (_, yaml) => {
    expect(paths(yaml)).toEqual([]);
  });
});

describe('a space for rework', () => {
  it('is not enough where a lot is between, which gives room only when all of it are out', () => {
    const lot = (rework: string): string =>
      back(`rework buffer: ${rework}`)
        .replace('check: {  }', 'check: {}, line: { places: 2, lot: { least: 2, most: 2 } }')
        .replace('  - { step: check', '  - { step: fit, at: line, work: 5 min }\n  - { step: check');
    expect(paths(lot('1'))).toEqual(['route[3].finds.gap.back to']);
    expect(paths(lot('unlimited'))).toEqual([]);
  });
});

const dolly = (count: number, more = '', buffer = 'buffer: 2'): string => `
scenario: dolly
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { stations: { a: { buffer: unlimited }, b: { ${buffer} }, c: { buffer: unlimited } } } }
defects: { gap: {} }
carriers: { dolly: { count: ${count}, from: one, to: two${more} } }
route:
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, work: 10 min, creates: { gap: 20 % } }
  - { step: three, at: c, work: 5 min, finds: { gap: { chance: 90 %, back to: two, limit: 3 } } }
`;

describe('carriers', () => {
  it('claimed again by units sent back are told, and how many are always enough', () => {
    // One at a, one at b and two ahead of it.
    const [only] = warned(dolly(3, ', in rework: again'));
    expect(only).toEqual({
      path: 'carriers.dolly.in rework',
      text:
        'a unit sent back may want dolly at two while units that have it want its place: ' +
        'dolly may wait for b, b for dolly',
      remedy: 'in rework: without, or 4 of dolly',
    });
    expect(warned(dolly(4, ', in rework: again'))).toEqual([]);
    expect(warned(dolly(3))).toEqual([]);
  });

  it('of two kinds that two routes claim in opposite order are told', () => {
    const crossed = (first: string, second: string): string =>
      `
scenario: crossed
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { stations: { a: {}, b: {}, c: {}, p: { buffer: unlimited }, q: { buffer: unlimited } } } }
carriers: { jig: { count: 1, from: one, to: three }, gauge: { count: 1, from: two, to: three } }
feeders: { frames: { stock: 1, route: [{ step: ${first}, at: p, work: 5 min }, { step: ${second}, at: q, work: 5 min }] } }
route:
  - { step: one, at: a, work: 10 min, when: { kind: x } }
  - { step: two, at: b, work: 10 min }
  - { step: three, at: c, work: 5 min, parts: { frames: 1 } }
`.replace('quantity: 50', 'quantity: 50, options: { kind: { x: 50 %, y: 50 % } }');
    // A unit without option x claims both at two; one with it has the jig and wants the gauge: no circle, since
    // all that have the gauge have the jig too.
    expect(paths(crossed('f', 'g'))).toEqual(['carriers.jig']);
  });
});

describe('teams', () => {
  const team = (hands: number): string => `
scenario: team
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { crews: { hands: ${hands} }, stations: { a: { buffer: unlimited }, b: { places: 2, buffer: unlimited } } } }
teams: { pair: { crew: hands, people: 1, from: one, to: two } }
route:
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, work: 10 min, crew: { hands: 1 } }
`;
  it('that may take all people while a step with them wants more are told', () => {
    expect(warned(team(2))).toEqual([
      {
        path: 'teams.pair.people',
        text: 'units with pair may hold all people of hands while two wants more of them',
        remedy: 'a crew of its own for pair, or for the step',
      },
    ]);
    expect(paths(team(50))).toEqual(['teams.pair.people']);
    // Without a limit ahead of b any number of teams may be formed; with none there are three units at most.
    expect(paths(team(4).replace('places: 2, buffer: unlimited', 'places: 2'))).toEqual([]);
    expect(paths(team(3).replace('places: 2, buffer: unlimited', 'places: 2'))).toEqual([
      'teams.pair.people',
    ]);
  });
});

describe('parts', () => {
  const bench = (places: number): string => `
scenario: kit bench
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bench: { places: ${places}, buffer: unlimited }, line: {} } } }
feeders:
  looms: { stock: 1, route: [{ step: bind, at: bench, work: 30 min }] }
  dashboards: { stock: 2, full kit: false, route: [{ step: wire, at: bench, parts: { looms: 1 }, work: 10 min }] }
route: [{ step: fit, at: line, parts: { looms: 1, dashboards: 2 }, work: 5 min }]
`;
  it('built on the bench where what they go into waits for them are told, unless it has a place more', () => {
    expect(warned(bench(2))).toEqual([
      {
        path: 'feeders.looms',
        text:
          'what waits for looms may stand where they have to go through: bench may wait for looms, ' +
          'looms for bench',
        remedy: 'a full kit for dashboards, or a station of their own for looms',
      },
    ]);
    expect(warned(bench(3))).toEqual([]);
  });

  it('bought in, of which fewer come than are taken, are told', () => {
    const bolts = (atStart: number, end: string): string => `
scenario: bolts
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { line: {} } } }
supplies: { bolts: { site: hall, at start: ${atStart}, deliveries: { lot: 5, every: 1 days, from: 2027-03-02${end} } } }
route: [{ step: fit, at: line, parts: { bolts: 3 }, work: 5 min }]
`;
    expect(warned(bolts(10, ', to: 2027-03-04'))).toEqual([
      {
        path: 'supplies.bolts',
        text: '25 of bolts come in all, and 20 units take about 60: whoever finds none stands for good',
        remedy: 'more or larger deliveries',
      },
    ]);
    expect(warned(bolts(45, ', to: 2027-03-04'))).toEqual([]);
    expect(warned(bolts(10, ''))).toEqual([]);
  });
});

describe('the scenarios of this repository', () => {
  const folder = join(import.meta.dirname, '../../../scenarios');
  const files = ['', 'rules'].flatMap((room) =>
    readdirSync(join(folder, room)).flatMap((name) => (name.endsWith('.yaml') ? join(room, name) : [])),
  );
  it('are warned of where they say that they stand still, where a bench builds both, and in one more loop', () => {
    const found = files.flatMap((file) => {
      const path = join(folder, file),
        read = (name: string): string => readFileSync(join(dirname(path), name), 'utf8');
      return warned(readFileSync(path, 'utf8'), read).map((each) => `${file} ${each.path}`);
    });
    expect(found).toEqual([
      // Its times are fixed and never let the two meet.
      'rules/07-sent-back.yaml route[2].finds.spatter.back to',
      'rules/16-gridlock.yaml route[2]',
    ]);
  });
});

describe('a bench that builds parts of what waits there for them', () => {
  const bench = (places: number, more: string, wait: string): string => `
scenario: bench
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bench: { places: ${places}, buffer: 9 }, pin bench: {} } } }
feeders:
  looms: { stock: 2, ${more}route: [{ step: bind, at: pin bench, parts: { pins: 1 }, work: 1 min }] }
  pins: { stock: 1, route: [{ step: turn, at: bench, work: 1 min }] }
route: [{ step: fit, at: bench, parts: { looms: 1 }, ${wait}work: 5 min }]
`;
  const AHEAD = 'wait for parts: in buffer, ';
  // Looms that are bound at the same bench, and may wait there for pins.
  const feeders = (places: number, kit: string): string =>
    bench(places, kit, AHEAD).replace('bind, at: pin bench', 'bind, at: bench');

  it('is told where units wait in its places, and not where they wait in the buffer', () => {
    expect(paths(bench(3, '', ''))).not.toEqual([]);
    expect(paths(bench(3, '', AHEAD))).toEqual([]);
  });
  it('is told of feeders without full kit where all its places can be taken, and not with full kit', () => {
    expect(paths(feeders(2, 'full kit: false, '))).not.toEqual([]);
    expect(paths(feeders(2, ''))).toEqual([]);
    expect(paths(feeders(3, 'full kit: false, '))).toEqual([]);
  });
  it('is told with full kit too where the step is done again, which claims its parts in the place', () => {
    const again = feeders(2, '').replace(
      'work: 1 min }] }\n  pins',
      'work: 1 min }, { step: look, at: pin bench, fails: { chance: 10 %, back to: bind } }] }\n  pins',
    );
    expect(paths(again)).not.toEqual([]);
  });
});
