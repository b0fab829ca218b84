import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const TEST =
  'step: road test, at: line, sample: 1 in 5, work: 1 h, fails: { chance: 4 %, back to: doors on }';
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'a carried find that is repaired too',
    [['repair: 25 min', 'repair: 25 min, carry: 5 min']],
    [
      '42:13 route[2].finds.dirt: exactly one of repair, back to, carry and scrap: true; got repair and carry',
    ],
  ],
  [
    'a carry without a unit',
    [['repair: 25 min', 'carry: 25']],
    ['42:36 route[2].finds.dirt.carry: a time with its unit (s, min, h, days), such as "25 min"; got 25'],
  ],
  [
    'a repair by an option that there is not',
    [['repair: 25 min', 'repair: { usual: 25 min, color: { red: 40 min } }']],
    ['42:54 route[2].finds.dirt.repair.color: no option of this name; got "color"; did you mean "colour"?'],
  ],
  [
    'a repair by a value that the option has not',
    [['repair: 25 min', 'repair: { usual: 25 min, colour: { rad: 40 min } }']],
    [
      '42:64 route[2].finds.dirt.repair.colour.rad: no value of this name in option colour; got "rad"; did you mean "red"?',
    ],
  ],
  [
    'a repair by option without a usual time',
    [['repair: 25 min', 'repair: { colour: { red: 40 min } }']],
    [
      '42:29 route[2].finds.dirt.repair.usual: missing; should be a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }',
    ],
  ],
  [
    'a repair by option whose usual time is misspelt',
    [['repair: 25 min', 'repair: { usuall: 25 min, colour: { red: 40 min } }']],
    [
      '42:29 route[2].finds.dirt.repair.usual: missing; should be a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }',
      '42:47 route[2].finds.dirt.repair.usuall: values of the option with their times, such as { red: 40 min }; got "25 min"',
    ],
  ],
  [
    'a repair by option without a unit',
    [['repair: 25 min', 'repair: { usual: 25 min, colour: { red: 40 } }']],
    [
      '42:69 route[2].finds.dirt.repair.colour.red: a time with its unit (s, min, h, days), such as "40 min"; got 40',
    ],
  ],
  [
    'a repair with a misspelt form of time',
    [['repair: 25 min', 'repair: { low: 5 min, hihg: 9 min }']],
    [
      '42:51 route[2].finds.dirt.repair.hihg: one of the keys low, likely, high, shape, mean, cv, sd, constant, uniform, triangular, pert, exponential, erlang, gamma, lognormal, normal, discrete, weibull, mixture, observed, column, unit; got "hihg"; did you mean "high"?',
    ],
  ],
  [
    'a repair with a misspelt name of a form',
    [['repair: 25 min', 'repair: { gama: { mean: 25 min, cv: 0.3 } }']],
    [
      '42:39 route[2].finds.dirt.repair.gama: one of the keys low, likely, high, shape, mean, cv, sd, constant, uniform, triangular, pert, exponential, erlang, gamma, lognormal, normal, discrete, weibull, mixture, observed, column, unit; got "gama"; did you mean "gamma"?',
    ],
  ],
  [
    'a hold that is no',
    [['work: 30 min, takes off', 'hold: false, work: 30 min, takes off']],
    ['44:39 route[4].hold: true, or what noted items take, such as { mend: 45 min }; got false'],
  ],
  [
    'a hold to which nothing comes',
    [
      ['runs: { chance: 90 %, back to: prime, limit: 3 }', 'runs: { chance: 90 %, repair: 5 min }'],
      ['- { step: bands, at: bay,', '- { step: bands, at: bay, hold: true,'],
    ],
    [
      '43:29 route[3].hold: an earlier find with carry, or with a back to that passes units on at its limit; without one, nothing is ever held here',
    ],
  ],
  [
    'a hold that does not know how long to mend',
    [['- { step: bands, at: bay,', '- { step: bands, at: bay, hold: true,']],
    [
      '43:35 route[3].hold: { mend: ... }, the work on items that come without a time, such as those passed on at the limit of route[2].finds.runs; got none',
    ],
  ],
  [
    'a hold with a sample',
    [['- { step: bands, at: bay,', '- { step: bands, at: bay, hold: { mend: 1 h }, sample: 1 in 2,']],
    ['43:50 route[3].sample: no sample at a hold, which no unit with noted items may pass'],
  ],
  [
    'a hold at a station that works on lots',
    [
      [
        '- { step: bands, at: bay, when: stripe, crew: { painters: 1 }, work: 3 h, in one shift: true }',
        '- { step: bands, at: oven, hold: { mend: 1 h } }',
      ],
    ],
    ['43:30 route[3].hold: no hold at "oven", which works on lots; give the hold a station of its own'],
  ],
  [
    'a comparison with a step that nothing defines',
    [[TEST, `${TEST}, compares with: doors in`]],
    [
      '51:119 route[7].compares with: no step of this name in this route; got "doors in"; did you mean "doors on"?',
    ],
  ],
  [
    'a comparison with itself',
    [[TEST, `${TEST}, compares with: { step: road test }`]],
    ['51:127 route[7].compares with.step: an earlier step; got "road test", which is this one'],
  ],
  [
    'a comparison with a step of another route',
    [[TEST, `${TEST}, compares with: build axle`]],
    ['51:119 route[7].compares with: a step of the same route; got "build axle", which is in another'],
  ],
  [
    'a comparison with a step that is no inspection',
    [[TEST, `${TEST}, compares with: prime`]],
    ['51:119 route[7].compares with: an inspection or test; got "prime", which finds nothing'],
  ],
  [
    'a comparison at a step that is no inspection',
    [['work: 30 min, takes off', 'compares with: inspect, work: 30 min, takes off']],
    ['44:33 route[4].compares with: a step that finds something or may fail; this one is no inspection'],
  ],
  [
    'extra work at a station that works on lots',
    [
      [
        '- { step: bands, at: bay, when: stripe, crew: { painters: 1 }, work: 3 h, in one shift: true }',
        '- { step: bands, at: oven, fails: { chance: 1 %, back to: bands }, compares with: { step: inspect, if it differs: 5 min } }',
      ],
    ],
    [
      '43:102 route[3].compares with.if it differs: no extra work at "oven", which works on lots; give the inspection a station of its own',
    ],
  ],
  [
    'a defect of a feeder that nobody finds',
    [
      ['at: line, work: 1 h }]', 'at: line, work: 1 h, creates: { crack: 5 % } }]'],
      ['dirt: {} }', 'dirt: {}, crack: {} }'],
    ],
    ['25:95 feeders.axles.route[0].creates.crack: a defect that this or a later step finds; no step does'],
  ],
  [
    'a defect of a feeder that is sought only before the part joins',
    [
      ['at: line, work: 1 h }]', 'at: line, work: 1 h, creates: { crack: 5 % } }]'],
      ['dirt: {} }', 'dirt: {}, crack: {} }'],
      ['repair: 25 min }', 'repair: 25 min }\n      crack: { chance: 50 %, repair: 5 min }'],
    ],
    [
      '25:95 feeders.axles.route[0].creates.crack: a defect that this or a later step finds; no step does',
      '43:7 route[2].finds.crack: a defect that this or an earlier step creates; no step does',
    ],
  ],
  [
    'nothing where the defect of a feeder is found on the unit',
    [
      ['at: line, work: 1 h }]', 'at: line, work: 1 h, creates: { crack: 5 % } }]'],
      ['dirt: {} }', 'dirt: {}, crack: {} }'],
      [TEST, `${TEST}, finds: { crack: { chance: 50 %, carry: 5 min } }`],
    ],
    [],
  ],
  [
    'nothing where what a feeder carries on comes to a hold of the unit',
    [
      ['at: line, work: 1 h }]', 'at: line, work: 1 h, fails: { chance: 5 %, carry: 5 min } }]'],
      ['runs: { chance: 90 %, back to: prime, limit: 3 }', 'runs: { chance: 90 %, scrap: true }'],
      [TEST, 'step: hold, at: line, hold: true'],
    ],
    [],
  ],
];

describe('quality', () => {
  it.each(cases)('reports %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
