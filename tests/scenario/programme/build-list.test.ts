import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/flow/model/model.js';
import { buildName } from '../../../src/flow/model/orders.js';
import { compile } from '../../../src/scenario/compile.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';

/**
 * One hall in Oslo, 06:00 to 14:00 less half an hour at noon: 450 min a day. Monday 2027-03-01 is the first
 * day. Worked by hand.
 */
const yaml = (programme: string): string => `
scenario: list
programme: { start: 2027-03-01, options: { colour: { red: 50 %, white: 50 % }, bands: 20 % }, ${programme} }
calendars: { days: { hours: ["06:00-14:00"], breaks: ["12:00-12:30"] } }
sites:
  hall: { zone: Europe/Oslo, calendar: days, stations: { cut: { buffer: 1 }, coat: { places: 2, buffer: 1 }, oven: { places: 3, buffer: 1, lot: { least: 1, most: 2 } }, last: {} } }
  port: { zone: Europe/Oslo, stations: { quay: {} } }
lanes: { road: { from: hall, to: port, trucks: 1, capacity: 1, drive: 1 h, return: 1 h, leaves: when full, bank: 1 } }
route:
  - { step: cut, at: cut, work: 1 h }
  - { step: coat, at: coat, work: 1 h }
  - { step: stripe, at: coat, when: bands, work: 1 h }
  - { step: bake, at: oven, process: 1 h }
  - { step: cool, at: oven, process: 1 h }
  - { lane: road }
  - { step: check, at: quay, work: 1 h, fails: { chance: 10 %, scrap: true } }
`;
const read = (programme: string, csv: string) =>
  readScenario(yaml(programme), 'list.yaml', (path) => {
    if (path !== 'builds.csv') throw new Error('no such file');
    return csv;
  });
const said = (programme: string, csv = 'build\nA1\n'): string[] =>
  (read(programme, csv).problems ?? []).map(sayProblem);
function programmeOf(programme: string, csv = ''): { model: Model; columns: Model['programme'] } {
  const { scenario, problems } = read(programme, csv);
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  const model = compile(scenario);
  return { model, columns: model.programme };
}
const DAY = 1440,
  RATE = 'build list: builds.csv, rate: { per day: 1 }';

describe('a build list', () => {
  it('releases units by day of release, or in their turn by the rate, and draws what goes beyond', () => {
    const { model, columns } = programmeOf(
      `${RATE}, quantity: 7`,
      'build,release,due,bands,colour\nB1,,,yes,\nB2,2027-03-02,2027-03-05,,white\n"B, 3",2027-03-02,,no,red\n\nB4,,,,\n',
    );
    // Three go by rate from Monday on, one a day: B1, B4 and drawn ones (units 3 more: 7 - 2 dated = 5 by
    // rate). Tuesday: B2 at 06:00 (before B4 by the list), the rate's B4 at 06:00, "B, 3" after half of 450
    // min, at 09:45.
    expect([...columns.times]).toEqual([
      360,
      DAY + 360,
      DAY + 360,
      DAY + 585,
      2 * DAY + 360,
      3 * DAY + 360,
      4 * DAY + 360,
    ]);
    expect(Array.from({ length: 7 }, (_, i) => buildName(model, i + 1))).toEqual([
      'B1',
      'B2',
      'B4',
      'B, 3',
      '5',
      '6',
      '7',
    ]);
    // Options colour and bands; -1 is drawn.
    expect([...columns.orders.values]).toEqual([-1, 0, 1, -1, -1, -1, 0, 1]);
    // Due at the end of Friday: midnight in Oslo, five days after the start.
    expect([...columns.orders.dueAt]).toEqual([Infinity, 5 * DAY, Infinity, Infinity]);
    expect(columns.quantity).toBe(7);
  });

  it('is the quantity where none is given, and needs no rate where every unit has its day', () => {
    const { columns } = programmeOf(
      'build list: builds.csv',
      'build,release,stands at\nA,2027-03-04,\nB,2027-03-01,\nC,,coat\n',
    );
    expect([columns.quantity, ...columns.times]).toEqual([3, 0, 360, 3 * DAY + 360]);
    expect(columns.orders.names).toEqual(['C', 'B', 'A']);
  });

  it('keeps a due date across the change of the clock: midnight at the end of the day in the zone of the programme', () => {
    // 2027-03-28 has 23 hours in Oslo.
    expect([...programmeOf(RATE, 'build,due\nA,2027-03-28\nB,2027-03-27\n').columns.orders.dueAt]).toEqual([
      28 * DAY - 60,
      27 * DAY,
    ]);
  });

  it('calls a drawn unit by its number, unless the list has another of this name', () => {
    const { model } = programmeOf(`${RATE}, quantity: 4`, 'build\n3\n17\n');
    expect([1, 2, 3, 4].map((number) => buildName(model, number))).toEqual(['3', '17', 'unit 3', '4']);
  });

  it('works with drawn arrivals in the order of the list', () => {
    const { columns } = programmeOf('build list: builds.csv, arrivals: 2 h', 'build\nA\nB\n');
    expect([columns.quantity, columns.orders.count, columns.times.length]).toEqual([2, 2, 0]);
  });

  it('lists the units that the run ends before at last', () => {
    const { columns } = programmeOf(`${RATE}, until: 2027-03-03`, 'build\nA\nB\nC\n');
    expect([columns.times.length, columns.orders.count, columns.quantity]).toEqual([2, 3, 3]);
  });
});

describe('problems with a build list stand at its own lines', () => {
  it.each<[string, string, string, readonly string[]]>([
    [
      'a file that is not there',
      'build list: list.csv, rate: { per day: 1 }',
      '',
      ['list.yaml:3:115 programme.build list: a CSV file that can be read (no such file); got "list.csv"'],
    ],
    [
      'no column for the build number',
      RATE,
      'unit\nA\n',
      ['builds.csv:1:1 programme.build list: a column with the heading build; got one other heading'],
    ],
    [
      'a heading that means nothing',
      RATE,
      'build,color\nA,red\n',
      [
        'builds.csv:1:1 programme.build list: a column with one of the headings build, release, due, stands at, colour, bands; got "color"; did you mean "colour"?',
      ],
    ],
    [
      'a heading twice',
      RATE,
      'build,due,due\nA,,\n',
      ['builds.csv:1:1 programme.build list: each heading once; got "due" again'],
    ],
    [
      'a build number twice',
      RATE,
      'build\nA\nB\n\nA\n',
      ['builds.csv:5:1 programme.build list: each build number once; got "A" again'],
    ],
    [
      'a row without a build number',
      RATE,
      'build,due\n,2027-03-05\n',
      ['builds.csv:2:1 programme.build list: a build number of 1 to 80 characters in column "build"; got ""'],
    ],
    [
      'a day that is none',
      RATE,
      'build,due\nA,2027-02-29\n',
      ['builds.csv:2:1 programme.build list: a day in column "due", such as 2027-03-01; got "2027-02-29"'],
    ],
    [
      'a value that the option has not',
      RATE,
      'build,colour\nA,red\nB,wite\n',
      [
        'builds.csv:3:1 programme.build list: no value of this name in option colour; got "wite"; did you mean "white"?',
      ],
    ],
    [
      'a day of release for a unit that stands there',
      RATE,
      'build,release,stands at\nA,2027-03-02,coat\n',
      [
        'builds.csv:2:1 programme.build list: either a day of release or the step at which the unit stands already; got both',
      ],
    ],
    [
      'a step that is not on the route',
      RATE,
      'build,stands at\nA,coot\n',
      [
        'builds.csv:2:1 programme.build list: no step or lane of this name in the unit\'s route; got "coot"; did you mean "coat"?',
      ],
    ],
    [
      'a release on a day off',
      RATE,
      'build,release\nA,2027-03-06\n',
      [
        'builds.csv:2:1 programme.build list: a day of release that is a working day of days; got "2027-03-06"',
      ],
    ],
    [
      'a release before the start',
      RATE,
      'build,release\nA,2027-02-26\n',
      [
        'builds.csv:2:1 programme.build list: a day of release not before the start of the programme, 2027-03-01; got "2027-02-26"',
      ],
    ],
    [
      'a release after the end',
      `${RATE}, until: 2027-03-10`,
      'build,release\nA,2027-03-10\n',
      [
        'builds.csv:2:1 programme.build list: a day of release before the end of the run, 2027-03-10; got "2027-03-10"',
      ],
    ],
    [
      'a due day before the start',
      RATE,
      'build,due\nA,2027-02-26\n',
      [
        'builds.csv:2:1 programme.build list: a due day not before the start of the programme, 2027-03-01; got "2027-02-26"',
      ],
    ],
    [
      'more rows than the quantity',
      `${RATE}, quantity: 1`,
      'build\nA\nB\n',
      ['list.yaml:3:160 programme.quantity: at least 2, the units of the opening and the build list; got 1'],
    ],
    [
      'nothing that releases some of them',
      'build list: builds.csv',
      'build,release\nA,2027-03-01\nB,\n',
      ['list.yaml:3:12 programme: a rate or arrivals for units that have no day of release; got neither'],
    ],
    [
      'days of release with drawn arrivals',
      'build list: builds.csv, arrivals: 2 h',
      'build,release\nA,2027-03-01\n',
      [
        'list.yaml:3:127 programme.arrivals: a rate, clock times, or nothing, where units have a day of release; got arrivals',
      ],
    ],
    [
      'a length',
      'build list: builds.csv, rate: { per day: 1 }, length: 100 h',
      'build\nA\n',
      [
        'list.yaml:3:158 programme.length: a build list only without a length, since it is a quantity; got both',
      ],
    ],
    [
      'an empty file',
      RATE,
      '',
      ['builds.csv:1:1 programme.build list: a heading line and at least one unit; got an empty file'],
    ],
    [
      'no row',
      RATE,
      'build\n',
      ['builds.csv:1:1 programme.build list: at least one unit below the heading; got none'],
    ],
  ])('%s', (_, programme, csv, expected) => {
    expect(said(programme, csv).map((line) => line.replace(/^list\.yaml:3:\d+/, 'list.yaml:3'))).toEqual(
      expected.map((line) => line.replace(/^list\.yaml:3:\d+/, 'list.yaml:3')),
    );
  });

  it('dates without a first day', () => {
    const { problems } = readScenario(
      yaml('build list: builds.csv, arrivals: 1 h').replace('start: 2027-03-01, ', ''),
      'list.yaml',
      () => 'build,due\nA,2027-03-02\n',
    );
    expect(problems?.map(({ path, wanted }) => [path, wanted])).toEqual([
      ['programme.start', 'missing; should be a first day, such as "2027-03-01", where units have dates'],
    ]);
  });
});

describe('problems with an opening', () => {
  const opening = (list: string, more = ''): string[] =>
    said(`rate: { per day: 1 }, quantity: 20, opening: [${list}]${more}`).map((line) =>
      line.replace(/^list\.yaml:3:\d+ programme\./, ''),
    );
  it.each<[string, string, readonly string[]]>([
    [
      'a step that is not on the route',
      '{ at: trim }',
      ['opening[0]: no step or lane of this name in the unit\'s route; got "trim"'],
    ],
    [
      'a build number for several',
      '{ at: cut, build: A, units: 2 }',
      ['opening[0].units: 1 unit for a build number; got 2'],
    ],
    [
      'an option that is none',
      '{ at: cut, options: { color: red } }',
      ['opening[0].options.color: no option of this name; got "color"; did you mean "colour"?'],
    ],
    [
      'a value that is none',
      '{ at: cut, options: { colour: green } }',
      ['opening[0].options.colour: no value of this name in option colour; got "green"'],
    ],
    [
      'a unit at a step to which only others come',
      '{ at: stripe }',
      ['opening[0]: a unit with bands: yes, as only such units come to stripe; got no bands'],
    ],
    [
      'a unit of another value there',
      '{ at: stripe, options: { bands: no } }',
      ['opening[0]: a unit with bands: yes, as only such units come to stripe; got "no"'],
    ],
    [
      'more units than places and spaces',
      '{ at: cut, units: 3 }',
      [
        'opening[0]: no more units at station cut than it has room for; it has 1 places and 1 spaces ahead; got one more at "cut"',
      ],
    ],
    [
      'two steps that share a station',
      '{ at: coat, units: 3 }, { at: stripe, options: { bands: yes } }',
      [
        'opening[0]: no more units at station coat than it has room for; it has 2 places and 1 spaces ahead; got one more at "coat"',
      ],
    ],
    [
      'a lot of two steps',
      '{ at: bake, units: 2 }, { at: cool }',
      [
        'opening[0]: no more units at station oven than it has room for; it has 2 places and 1 spaces ahead; got one more at "bake"',
      ],
    ],
    [
      'more units than the bank has spaces',
      '{ at: road, units: 2 }',
      [
        'opening[0]: no more units at lane road than it has room for; the bank ahead of it has 1; got one more at "road"',
      ],
    ],
    [
      'the same build twice',
      '{ at: cut, build: A }, { at: coat, build: A }',
      ['opening[1]: each build number once; got "A" again'],
    ],
    [
      'a due day that is past',
      '{ at: cut, due: 2027-02-01 }',
      ['opening[0]: a due day not before the start of the programme, 2027-03-01; got "2027-02-01"'],
    ],
  ])('%s', (_, list, expected) => {
    expect(opening(list)).toEqual(expected);
  });

  it('a lot takes what room it has', () => {
    expect(
      opening('{ at: bake, units: 3 }, { at: coat, units: 3 }, { at: cut, units: 2 }, { at: road }'),
    ).toEqual([]);
  });

  it('a due time for a saturated source, which has no release', () => {
    expect(
      said('arrivals: saturated, quantity: 5, due after: 2 days').map((line) => line.replace(/^\S+ /, '')),
    ).toEqual([
      'programme.due after: units that are released by a rate or at times; a saturated source has no release to count from; got arrivals: saturated',
    ]);
  });
});
