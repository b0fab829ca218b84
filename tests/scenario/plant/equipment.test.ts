import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/**
 * What a planner might add to small.yaml: to its plant on line 14, to priming on line 33, to baking on line
 * 36, to bands on line 43; and what is then said; worded by hand, no outside source.
 */
// On lines of its own, in a map in block style.
const hall = (text: string): Edit => [
  '    crews: { painters: 6 }\n',
  `    crews: { painters: 6 }\n    equipment: { ${text} }\n`,
];
const priming = (text: string): Edit => ['    at: booth\n', `    at: booth\n    equipment: { ${text} }\n`];
const baking = (text: string): Edit => ['process: 50 min', `process: 50 min, equipment: { ${text} }`];
const bands = (text: string): Edit => ['when: stripe,', `when: stripe, equipment: { ${text} },`];

const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'none of it',
    [hall('hoist: 0')],
    ['15:25 sites.coachworks.equipment.hoist: a whole number from 1 to 1,000; got 0'],
  ],
  [
    'a word for a number',
    [hall('hoist: one')],
    [
      '15:25 sites.coachworks.equipment.hoist: a number from 1, such as 2, or { count: 2, calendar: days }; got "one"',
    ],
  ],
  [
    'a misspelt key',
    [hall('hoist: { cuont: 1 }')],
    [
      '15:27 sites.coachworks.equipment.hoist.cuont: one of the keys count, calendar, failures; got "cuont"; did you mean "count"?',
    ],
  ],
  [
    'hours that are not there',
    [hall('hoist: { count: 1, calendar: dys }')],
    [
      '15:47 sites.coachworks.equipment.hoist.calendar: no calendar of this name; got "dys"; did you mean "days"?',
    ],
  ],
  [
    'failures without end',
    [hall('hoist: { count: 1, failures: { every: 0 h, repair: 1 h } }')],
    [
      '15:37 sites.coachworks.equipment.hoist.failures[0].every: a time greater than 0 between failures; got 0',
    ],
  ],
  [
    'a name that the site of the station does not have',
    [hall('hoist: 1'), priming('hoits: 1')],
    [
      '34:18 route[0].equipment.hoits: no equipment of this name in site coachworks; got "hoits"; did you mean "hoist"?',
    ],
  ],
  [
    'more than there are',
    [hall('hoist: 1'), priming('hoist: 2')],
    ['34:25 route[0].equipment.hoist: at most 1, the number of hoist in site coachworks; got 2'],
  ],
  [
    'a part without a unit',
    [hall('hoist: 1'), priming('hoist: { first: 30 }')],
    [
      '34:34 route[0].equipment.hoist.first: a time with its unit (s, min, h, days), such as "30 min"; got 30',
    ],
  ],
  [
    'the first and the last part',
    [hall('hoist: 1'), priming('hoist: { first: 30 min, last: 5 min }')],
    [
      '34:48 route[0].equipment.hoist.last: either first or last; write two steps where it is needed at both ends; got both',
    ],
  ],
  [
    'a part in hours of its own',
    [hall('hoist: { count: 1, calendar: late }'), priming('hoist: { first: 30 min }')],
    [
      '34:34 route[0].equipment.hoist.first: equipment with the hours of the station or a crew of the step, or for the whole work; got calendar late',
      '35:11 route[0].crew: a station, crews and equipment that are in at the same time in some hour of the week; got none',
    ],
  ],
  [
    'a part of a process',
    [hall('hoist: 1'), baking('hoist: { last: 30 min }')],
    [
      '37:74 route[1].equipment.hoist.last: a step with work, or equipment for all of its passes; got no work',
    ],
  ],
  [
    'a part of work in one shift',
    [hall('hoist: 1'), bands('hoist: { last: 30 min }')],
    [
      '44:71 route[3].equipment.hoist.last: a step that is not `in one shift`, or equipment for the whole work; got both',
    ],
  ],
  [
    'what fails, in lots',
    [hall('hoist: { count: 1, failures: { every: 10 h, repair: 1 h } }'), baking('hoist: 1')],
    [
      '37:59 route[1].equipment.hoist: equipment that never fails, at a station that takes units in lots; got hoist, which has failures',
    ],
  ],
];

describe('equipment that cannot be', () => {
  it.each(cases)('is told: %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });

  it('is not what can', () => {
    expect(
      said(
        hall('hoist: { count: 2, calendar: days, failures: { every: 90 h, repair: 2 h } }, crane: 1'),
        priming('hoist: { first: { low: 5 min, high: 10 min } }, crane: { last: 10 min }'),
        baking('crane: 1'),
        bands('hoist: 2'),
      ),
    ).toEqual([]);
  });
});
