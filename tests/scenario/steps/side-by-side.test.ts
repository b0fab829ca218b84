import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/**
 * What a planner might write for the step `bands` of small.yaml, line 43, and what is then said; worded by
 * hand, no outside source.
 */
const group = (inner: string, at = 'bay'): Edit => [
  '{ step: bands, at: bay, when: stripe, crew: { painters: 1 }, work: 3 h, in one shift: true }',
  `{ at: ${at}, side by side: ${inner} }`,
];
const two = (second: string): Edit => group(`[{ step: bands, work: 1 h }, { step: foil, ${second} }]`);
const people = (most: number): Edit => ['bay: { places: 2 }', `bay: { places: 2, people: ${most} }`];

const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'a single step',
    [group('[{ step: bands, work: 1 h }]')],
    ['43:30 route[3].side by side: at least two steps; got a list'],
  ],
  ['no list', [group('bands')], ['43:30 route[3].side by side: a list of steps; got "bands"']],
  [
    'no station',
    [
      [
        '{ step: bands, at: bay, when: stripe, crew: { painters: 1 }, work: 3 h, in one shift: true }',
        '{ side by side: [{ step: bands }, { step: foil }] }',
      ],
    ],
    ['43:5 route[3].at: missing; should be the name of a station'],
  ],
  [
    'a station that is not there',
    [group('[{ step: bands, work: 1 h, crew: { painters: 1 } }, { step: foil, work: 1 h }]', 'bey')],
    ['43:11 route[3].at: no station of this name; got "bey"; did you mean "bay"?'],
  ],
  [
    'an inspection inside',
    [two('finds: { runs: { chance: 90 %, repair: 5 min } }')],
    [
      '43:73 route[3].side by side[1].finds: one of the keys step, when, crew, equipment, work, passes, work factor, learning, process, in one shift, parts, creates; got "finds"',
    ],
  ],
  [
    'a station of its own',
    [two('at: bay, work: 1 h')],
    [
      '43:73 route[3].side by side[1].at: one of the keys step, when, crew, equipment, work, passes, work factor, learning, process, in one shift, parts, creates; got "at"',
    ],
  ],
  [
    'work and passes',
    [two('work: 1 h, passes: { count: 2, work: 1 h }')],
    [
      '43:92 route[3].side by side[1].passes: either work or passes; the work of a pass stands inside passes; got both',
    ],
  ],
  [
    'a crew that is not there',
    [two('crew: { painter: 1 }')],
    [
      '43:81 route[3].side by side[1].crew.painter: no crew of this name in site coachworks; got "painter"; did you mean "painters"?',
    ],
  ],
  [
    'a name for the second time',
    [two('work: 1 h'), ['step: foil', 'step: prime']],
    [
      '43:67 route[3].side by side[1].step: each step name once over all routes; got "prime" again, first at route[0]',
    ],
  ],
  [
    'a condition that no unit meets',
    [two('when: { colour: white }'), ['red: 70 %, white: 30 %', 'red: 100 %, white: 0 %']],
    [
      '43:79 route[3].side by side[1].when: a condition that some unit can meet; got colour: white, with a share of 0 %',
    ],
  ],
  [
    'a defect that nothing finds',
    [two('creates: { scratch: 5 % }'), ['dirt: {} }', 'dirt: {}, scratch: {} }']],
    [
      '43:84 route[3].side by side[1].creates.scratch: a defect that this or a later step finds; no step does',
    ],
  ],
  [
    'a station with lots',
    [group('[{ step: bands, work: 1 h }, { step: foil, work: 1 h }]', 'oven')],
    ['43:11 route[3].at: a station that takes units one by one; got "oven", which works on lots'],
  ],
  [
    'a station that wears',
    [
      group('[{ step: bands, work: 1 h }, { step: foil, work: 1 h }]'),
      ['bay: { places: 2 }', 'bay: { places: 2, failures: { every: 60 h, repair: 1 h } }'],
    ],
    [
      '43:11 route[3].at: a station that fails by calendar time or not at all; operating time is not counted for steps side by side; got "bay"',
    ],
  ],
  [
    'more people than the crew has',
    [two('crew: { painters: 7 }')],
    [
      '43:91 route[3].side by side[1].crew.painters: at most 6, the headcount of painters in site coachworks; got 7',
    ],
  ],
  [
    'more people than have room, side by side',
    [two('crew: { painters: 4 }'), people(3)],
    [
      '43:79 route[3].side by side[1].crew: no more people than the 3 who can work in a place of "bay"; got 4',
    ],
  ],
  [
    'more people than have room, at a single step',
    [
      [
        'step: bands, at: bay, when: stripe, crew: { painters: 1 }',
        'step: bands, at: bay, when: stripe, crew: { painters: 4 }',
      ],
      people(3),
    ],
    ['43:49 route[3].crew: no more people than the 3 who can work in a place of "bay"; got 4'],
  ],
  [
    'more people than have room, with a team',
    [
      people(2),
      ['defects: {', 'teams: { pair: { crew: painters, people: 2, from: bands, to: bands } }\ndefects: {'],
    ],
    ['44:49 route[3].crew: no more people than the 2 who can work in a place of "bay"; got 1 and 2 of teams'],
  ],
  [
    'a team alone that has no room',
    [
      people(1),
      [
        'defects: {',
        'teams: { pair: { crew: painters, people: 2, from: inspect, to: inspect } }\ndefects: {',
      ],
    ],
    ['38:5 route[2]: no more people than the 1 who can work in a place of "bay"; got 0 and 2 of teams'],
  ],
];

describe('steps side by side that cannot be', () => {
  it.each(cases)('are told: %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });

  it('are not those that can, with a send-back and a team that name them', () => {
    expect(
      said(two('crew: { painters: 2 }, process: 5 min'), people(3), [
        'dirt: { chance: 85 %, repair: 25 min }',
        'dirt: { chance: 85 %, repair: 25 min }\n  - { step: look again, at: bay, finds: { runs: { chance: 50 %, repair: 5 min } } }',
      ]),
    ).toEqual([]);
    expect(
      said(
        group('[{ step: bands, work: 1 h }, { step: foil, work: 1 h }]'),
        [
          'work: 30 min, takes off: doors',
          'work: 30 min, takes off: doors, fails: { chance: 5 %, back to: foil }',
        ],
        [
          'defects: {',
          'teams: { pair: { crew: painters, people: 2, from: foil, to: doors off } }\ndefects: {',
        ],
      ),
    ).toEqual([]);
  });
});
