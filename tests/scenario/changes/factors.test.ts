import { describe, expect, it } from 'vitest';
import { readFactors } from '../../../src/scenario/changes/factors.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { fixture } from '../read-small.js';

const BASE = { text: fixture('small.yaml'), file: 'small.yaml' };
const read = (text: string) => readFactors(text, 'factors.yaml', BASE, () => '');
/** Problems without the name of the file. */
const said = (text: string): string[] =>
  (read(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^factors\.yaml:/, ''));
const good = (text: string) => {
  const { factors, problems } = read(text);
  expect((problems ?? []).map(sayProblem)).toEqual([]);
  return factors!;
};

const ROOM = 'room: { note: dear, change: sites.coachworks.stations.booth.buffer, levels: [2, 4] }',
  BAYS = 'bays: { change: sites.coachworks.stations.bay.places, levels: [2, 3] }',
  SPREAD = 'spread: { scale: spread, of: booth, levels: [1, 1.5] }',
  CREW =
    'people: { levels: { as now: [], more: [{ sites.coachworks.crews.painters: 8 }, { scale: { times: 0.9, of: bands } }] } }';
const file = (...factors: string[]): string => `factors:\n  ${factors.join('\n  ')}\n`;

describe('a file of factors', () => {
  it('makes all combinations in standard order, each the scenario with its levels and nothing else', () => {
    const { factors, fraction, combinations } = good(file(ROOM, BAYS, SPREAD));
    expect(fraction).toBeNull();
    expect(combinations.map(({ levels }) => levels.join(''))).toEqual([
      '000',
      '100',
      '010',
      '110',
      '001',
      '101',
      '011',
      '111',
    ]);
    const { stations } = combinations[6].scenario.sites['coachworks'];
    expect([stations['booth'].buffer, stations['bay'].places, stations['oven'].places]).toEqual([2, 3, 4]);
    expect(factors[0]).toMatchObject({ name: 'room', note: 'dear' });
    expect(factors[2].levels).toEqual([
      {
        name: '1',
        changes: [
          {
            path: 'scale spread of booth',
            words: 'the factor on the spread of 1 time of booth',
            before: '1',
            after: '1',
          },
        ],
      },
      { name: '1.5', changes: [expect.objectContaining({ after: '1.5' })] },
    ]);
  });

  it('takes lists of changes by the name of a level, and half of the combinations', () => {
    const { factors, fraction, combinations } = good(`design: half\n${file(ROOM, BAYS, SPREAD, CREW)}`);
    expect(fraction).toMatchObject({ name: 'half', resolution: 'IV' });
    expect(combinations).toHaveLength(8);
    // The fourth is at its second level where an odd number of the others is: D = ABC.
    for (const { levels, scenario } of combinations) {
      expect(levels[3]).toBe((levels[0] + levels[1] + levels[2]) % 2);
      expect(scenario.sites['coachworks'].crews['painters'].headcount).toBe(levels[3] === 1 ? 8 : 6);
    }
    expect(factors[3].levels.map(({ name, changes }) => [name, changes.map(({ path }) => path)])).toEqual([
      ['as now', []],
      ['more', ['sites.coachworks.crews.painters', 'scale times of bands']],
    ]);
  });

  it('takes three levels, and values that are lists', () => {
    const { combinations } = good(
      file(
        ROOM.replace('[2, 4]', '[1, 2, 4]'),
        'x: { change: programme.rate, levels: [[{ per day: 2 }], [{ per day: 3 }]] }',
      ),
    );
    expect(combinations).toHaveLength(6);
  });
});

describe('what is wrong in a file of factors is told at its line', () => {
  it.each<[title: string, text: string, expected: string[]]>([
    [
      'a value that cannot be, once for all combinations',
      file(ROOM, BAYS.replace('3', 'two')),
      ['3:69 bays: sites.coachworks.stations.bay.places: a whole number from 1 to 1,000,000; got "two"'],
    ],
    [
      'a misspelt path, once for all levels',
      file(ROOM, BAYS.replace('coachworks', 'coachwork')),
      [
        '3:19 bays: sites.coachwork.stations.bay.places: a key or name in sites; got "coachwork"; did you mean "coachworks"?',
      ],
    ],
    ['a level twice', file(ROOM, BAYS.replace('3', '2')), ['3:65 bays: each level once; got "2" again']],
    [
      'the same value in two factors',
      file(ROOM, BAYS.replace('bay.places', 'booth.buffer')),
      [2, 3].map(
        (_, i) =>
          `3:${68 + 3 * i} bays: sites.coachworks.stations.booth.buffer: each value changed once; another change of this combination of levels has it, or a part of it, already`,
      ),
    ],
    [
      'a level that does not go with another line',
      file(ROOM, 'few: { levels: { now: [], one: [{ sites.coachworks.crews.painters: 1 }] } }'),
      [
        '1:1 room 2, few one: route[0].crew.painters: at most 1, the headcount of painters in site coachworks (small.yaml:33); got 2',
      ],
    ],
    [
      'levels that are alike',
      file(ROOM, 'same: { levels: { now: [], too: [{ sites.coachworks.crews.painters: 6 }] } }'),
      ['3:11 same: levels that differ; got the same scenario with "now" and "too"'],
    ],
    ['one factor', file(ROOM), ['1:1 factors: 2 to 5 factors, each a name with its levels; got 1']],
    [
      'a list of levels without a path',
      file(ROOM, 'b: { levels: [1, 2] }'),
      ['3:8 b: change: path (or scale: spread) beside a list of levels; got a list'],
    ],
    [
      'a level that is no list',
      file(ROOM, 'b: { levels: { now: 1, then: [] } }'),
      ['3:23 b: a list of changes; [] leaves the scenario as it is; got 1'],
    ],
    [
      'half of two factors',
      `design: half\n${file(ROOM, BAYS)}`,
      ['1:9 design: full, or at least 3 factors; got 2 factors'],
    ],
    [
      'a part with three levels',
      `design: half\n${file(ROOM, BAYS, SPREAD.replace('[1', '[0, 1'))}`,
      ['1:9 design: full, or factors with two levels each; got three levels of "spread"'],
    ],
    [
      'a misspelt design',
      `design: helf\n${file(ROOM, BAYS)}`,
      ['1:9 design: one of full, half, quarter; got "helf"; did you mean "half"?'],
    ],
    [
      'a misspelt key',
      file(ROOM, BAYS.replace('change', 'chnge')),
      [
        '3:11 bays: one of the keys change, scale, of, levels, note; got "chnge"; did you mean "change"?',
        '3:56 bays: change: path (or scale: spread) beside a list of levels; got a list',
      ],
    ],
    [
      'both forms',
      file(ROOM, BAYS.replace('{', '{ scale: spread,')),
      ['3:11 bays: either a change or a scale; got both'],
    ],
    [
      'another start',
      file(ROOM, 'b: { change: programme.start, levels: [2027-03-01, 2027-03-02] }'),
      [
        '1:1 room 2, b 2027-03-02: start, zone, length and warm up of the programme as in the scenario, so that weeks can be compared',
      ],
    ],
    [
      'another file',
      'password: secret',
      [
        '1:1 factors: a map of 2 to 5 factors, each a name with change: path and levels: [value, value]; got a file that is none',
      ],
    ],
  ])('%s', (_, text, expected) => {
    expect(said(text)).toEqual(expected);
  });
});
