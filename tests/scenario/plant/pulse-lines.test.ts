import { describe, expect, it } from 'vitest';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';

const text = `
scenario: pulse
programme: { arrivals: saturated, quantity: 5, options: { stripe: 35 % } }
calendars: { days: { hours: ["06:00-14:00"] } }
defects: { gap: {} }
sites:
  hall: { calendar: days, stations: { start: {}, a: { buffer: 2 }, b: {}, c: {}, end: {} } }
  yard: { stations: { gate: {} } }
lanes: { road: { from: hall, to: yard, trucks: 1, capacity: 1, drive: 1 h } }
pulse lines:
  final: { stations: [a, b, c], takt: 4 h }
route:
  - { step: begin, at: start, work: 1 h }
  - { step: one, at: a, work: 1 h, creates: { gap: 4 % } }
  - { step: two, at: b, work: 1 h }
  - { step: stripe, at: b, when: stripe, work: 1 h }
  - { step: three, at: c, work: 1 h, finds: { gap: { chance: 90 %, repair: 1 h } } }
  - { step: finish, at: end, work: 1 h }
  - lane: road
  - { step: out, at: gate, work: 1 min }
`;
function said(...edits: readonly (readonly [string, string])[]): string[] {
  let edited = text;
  for (const [before, after] of edits) {
    if (!edited.includes(before)) throw new Error(`the text has no "${before}"`);
    edited = edited.replace(before, after);
  }
  return (readScenario(edited, 'pulse.yaml', () => '').problems ?? []).map((problem) =>
    sayProblem(problem).replace(/^pulse\.yaml:/, ''),
  );
}

/** What a planner might do to it, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [
  title: string,
  edits: readonly (readonly [string, string])[],
  expected: readonly string[],
])[] = [
  ['a line with a buffer ahead, an optional step and a repair', [], []],
  [
    'a misspelt station',
    [['[a, b, c]', '[a, bb, c]']],
    ['11:26 pulse lines.final.stations[1]: no station of this name; got "bb"; did you mean "b"?'],
  ],
  [
    'no takt',
    [[', takt: 4 h', '']],
    ['11:3 pulse lines.final.takt: missing; should be a time, such as "20 min"; units are s, min, h, days'],
  ],
  [
    'two places',
    [['b: {}', 'b: { places: 2 }']],
    ['7:81 sites.hall.stations.b.places: one place at a station of a pulse line; got 2'],
  ],
  [
    'a buffer inside',
    [['b: {}', 'b: { buffer: 1 }']],
    [
      '7:81 sites.hall.stations.b.buffer: no buffer but ahead of the first station at a station of a pulse line; got 1',
    ],
  ],
  [
    'a rework buffer',
    [['b: {}', 'b: { rework buffer: 1 }']],
    ['7:88 sites.hall.stations.b.rework buffer: no rework buffer at a station of a pulse line; got 1'],
  ],
  [
    'another calendar',
    [['b: {}', 'b: { unattended: true }']],
    [
      '11:22 pulse lines.final.stations: stations of one calendar, in which the takt is counted; got days and always open',
    ],
  ],
  [
    'another order',
    [
      ['[a, b, c]', '[b, a, c]'],
      ['a: { buffer: 2 }', 'a: {}'],
    ],
    [
      '11:22 pulse lines.final.stations: the stations in the order in which the route visits them, one after the other with no other step or lane between; got a, b, c in the route',
    ],
  ],
  [
    'a station left out',
    [['[a, b, c]', '[a, c]']],
    [
      '11:22 pulse lines.final.stations: the stations in the order in which the route visits them, one after the other with no other step or lane between; got a, c in the route, with others between',
    ],
  ],
  [
    'a station that only some visit',
    [['step: three, at: c,', 'step: three, at: c, sample: 1 in 5,']],
    [
      '11:29 pulse lines.final.stations[2]: a station with a step that every unit visits, without when, sample or rework; got "c"',
    ],
  ],
  [
    'a station twice',
    [['takt: 4 h }', 'takt: 4 h }\n  other: { stations: [c], takt: 1 h }']],
    [
      '12:23 pulse lines.other.stations[0]: each station once over all pulse lines; got "c" again, first in final',
    ],
  ],
  [
    'a send-back on the line',
    [['repair: 1 h', 'back to: one']],
    [
      '17:77 route[4].finds.gap.back to: a step at the same station, or a repair, on a pulse line; got a step at "a"',
    ],
  ],
  [
    'a send-back into the line',
    [['finish, at: end, work: 1 h', 'finish, at: end, work: 1 h, fails: { chance: 5 %, back to: two }']],
    ['18:72 route[5].fails.back to: a step that is not on a pulse line; got a step at "b"'],
  ],
];

describe('pulse lines', () => {
  it.each(cases)('%s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
