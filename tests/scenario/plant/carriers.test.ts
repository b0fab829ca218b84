import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/**
 * What a planner might add to small.yaml, ahead of its defects on line 29, and what is then said; worded by
 * hand, no outside source.
 */
const carriers = (text: string): Edit => ['defects: {', `carriers: { dollies: { ${text} } }\ndefects: {`];
const teams = (text: string): Edit => ['defects: {', `teams: { pair: { ${text} } }\ndefects: {`];

const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'carriers without a count',
    [carriers('from: prime, to: doors on')],
    ['29:13 carriers.dollies.count: missing; should be a whole number from 1 to 10,000'],
  ],
  [
    'no carriers at all',
    [carriers('count: 0, from: prime, to: doors on')],
    ['29:31 carriers.dollies.count: a whole number from 1 to 10,000; got 0'],
  ],
  [
    'a list of carriers',
    [['defects: {', 'carriers: [dollies]\ndefects: {']],
    ['29:11 carriers: carriers by name; got a list'],
  ],
  [
    'a carrier that is only a number',
    [['defects: {', 'carriers: { dollies: 12 }\ndefects: {']],
    [
      '29:22 carriers.dollies: carriers: a map with the keys count, from and to, such as { count: 12, from: set up frame, to: receive }; got 12',
    ],
  ],
  [
    'a misspelt key',
    [carriers('count: 3, from: prime, until: doors on')],
    [
      '29:13 carriers.dollies.to: missing; should be the name of a step',
      '29:47 carriers.dollies.until: one of the keys count, from, to, in rework, return, hours; got "until"',
    ],
  ],
  [
    'a way back without unit',
    [carriers('count: 3, from: prime, to: doors on, return: 3')],
    ['29:69 carriers.dollies.return: a time with its unit (s, min, h, days), such as "3 min"; got 3'],
  ],
  [
    'a step that is not there',
    [carriers('count: 3, from: prme, to: doors on')],
    ['29:40 carriers.dollies.from: no step of this name; got "prme"; did you mean "prime"?'],
  ],
  [
    'hours that are not there',
    [carriers('count: 3, from: prime, to: doors on, hours: day')],
    ['29:68 carriers.dollies.hours: no calendar of this name; got "day"; did you mean "days"?'],
  ],
  [
    'a stretch that goes backwards',
    [carriers('count: 3, from: inspect, to: prime')],
    [
      '29:53 carriers.dollies.to: "inspect" or a later step of the same route; got "prime", which comes earlier',
    ],
  ],
  [
    'a stretch over two routes',
    [carriers('count: 3, from: prime, to: build axle')],
    [
      '29:51 carriers.dollies.to: "prime" or a later step of the same route; got "build axle", which is in another',
    ],
  ],
  [
    'a claim at a station with lots',
    [carriers('count: 3, from: bake, to: inspect')],
    [
      '29:40 carriers.dollies.from: a step at a station that takes units one by one; got "bake", at "oven", which works on lots',
    ],
  ],
  [
    'a crew that is not at the site',
    [teams('crew: fitters, people: 1, from: prime, to: prime')],
    ['29:24 teams.pair.crew: no crew of this name in site coachworks; got "fitters"'],
  ],
  [
    'a team that would travel',
    [teams('crew: painters, people: 1, from: prime, to: doors on')],
    [
      '29:62 teams.pair.to: steps in site coachworks, where the crew is, without a lane between; got "doors on", behind lane "ferry"',
    ],
  ],
  [
    'a team without people',
    [teams('crew: painters, people: 0, from: prime, to: prime')],
    ['29:42 teams.pair.people: a whole number from 1 to 1,000,000; got 0'],
  ],
  [
    'more people than the crew has',
    [teams('crew: painters, people: 7, from: bands, to: bands')],
    [
      '29:42 teams.pair.people: at most 5, the headcount of painters in site coachworks less the 1 that step "bands" needs as well; got 7',
    ],
  ],
  [
    'a larger team than the crew',
    [teams('crew: painters, people: 7, from: inspect, to: inspect')],
    ['29:42 teams.pair.people: at most 6, the headcount of painters in site coachworks; got 7'],
  ],
  [
    'two teams that are more together than the crew',
    [
      [
        'defects: {',
        'teams: { one: { crew: painters, people: 4, from: inspect, to: inspect }, two: { crew: painters, people: 3, from: prime, to: inspect } }\ndefects: {',
      ],
      ['crew: { painters: 2 }', 'crew: {}'],
    ],
    [
      '29:41 teams.one.people: at most 3, the headcount of painters in site coachworks less the 3 that step "inspect" needs as well; got 4',
      '29:105 teams.two.people: at most 2, the headcount of painters in site coachworks less the 4 that step "inspect" needs as well; got 3',
    ],
  ],
  [
    'a team that is never in with the station',
    [
      teams('crew: fitters, people: 1, from: doors on, to: doors on'),
      ['line: { buffer: unlimited }', 'line: { buffer: unlimited, calendar: late }'],
      ['crew: { fitters: 2 }', 'crew: {}'],
    ],
    [
      '49:11 route[6].crew: a station and crews that are in at the same time in some hour of the week; got none',
    ],
  ],
  [
    'more kinds than a unit can keep',
    [
      [
        'defects: {',
        `carriers: { ${Array.from({ length: 32 }, (_, i) => `dolly ${i}: { count: 1, from: prime, to: prime }`).join(', ')} }\ndefects: {`,
      ],
    ],
    ['29:1 carriers: at most 31 kinds of carriers and teams together; got 32'],
  ],
];

describe('carriers and teams that cannot be', () => {
  it.each(cases)('are told: %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });

  it('are not those that can', () => {
    expect(
      said(carriers('count: 3, from: prime, to: doors on, return: { low: 1 h, high: 3 h }, hours: late')),
    ).toEqual([]);
    expect(said(teams('crew: painters, people: 2, from: prime, to: doors off'))).toEqual([]);
  });
});
