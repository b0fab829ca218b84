import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'an option in a chance',
    [['colour: { red: 7 %', 'color: { red: 7 %']],
    ['35:47 route[0].creates.dirt.color: no option of this name; got "color"; did you mean "colour"?'],
  ],
  [
    'a value in a chance',
    [['colour: { red: 7 %', 'colour: { rad: 7 %']],
    [
      '35:57 route[0].creates.dirt.colour.rad: no value of this name in option colour; got "rad"; did you mean "red"?',
    ],
  ],
  [
    'a station',
    [['at: booth', 'at: both']],
    ['32:9 route[0].at: no station of this name; got "both"; did you mean "booth"?'],
  ],
  [
    'a crew',
    [['crew: { painters: 2 }', 'crew: { paintrs: 2 }']],
    [
      '33:13 route[0].crew.paintrs: no crew of this name in site coachworks; got "paintrs"; did you mean "painters"?',
    ],
  ],
  [
    'a crew of another site',
    [['crew: { painters: 2 }', 'crew: { fitters: 2 }']],
    ['33:13 route[0].crew.fitters: no crew of this name in site coachworks; got "fitters"'],
  ],
  [
    'a calendar of a site',
    [['calendar: days\n    crews', 'calendar: day\n    crews']],
    ['13:15 sites.coachworks.calendar: no calendar of this name; got "day"; did you mean "days"?'],
  ],
  [
    'a lane',
    [['- lane: ferry', '- lane: fery']],
    ['45:11 route[5].lane: no lane of this name; got "fery"; did you mean "ferry"?'],
  ],
  [
    'a site of a lane, without a storm about the way',
    [['to: final plant', 'to: finalplant']],
    ['28:34 lanes.ferry.to: no site of this name; got "finalplant"; did you mean "final plant"?'],
  ],
  [
    'a feeder',
    [['axles: 2,', 'axle: 2,']],
    ['50:14 route[6].parts.axle: no feeder or supply of this name; got "axle"; did you mean "axles"?'],
  ],
  [
    'a kind of defect',
    [['runs: { chance', 'run: { chance']],
    [
      '41:7 route[2].finds.run: no kind of defect of this name under defects; got "run"; did you mean "runs"?',
    ],
  ],
  [
    'a step to go back to',
    [['back to: prime', 'back to: prme']],
    [
      '41:38 route[2].finds.runs.back to: no step of this name in this route; got "prme"; did you mean "prime"?',
    ],
  ],
  [
    'a step ahead to go back to',
    [['back to: prime', 'back to: bands']],
    ['41:38 route[2].finds.runs.back to: the same or an earlier step; got "bands", which comes later'],
  ],
  [
    'a step of another route to go back to',
    [['back to: prime', 'back to: build axle']],
    ['41:38 route[2].finds.runs.back to: a step of the same route; got "build axle", which is in another'],
  ],
  [
    'a step name that is given twice',
    [['step: bands', 'step: bake']],
    ['43:13 route[3].step: each step name once over all routes; got "bake" again, first at route[1]'],
  ],
  [
    'a station name that is given twice',
    [['cell:', 'bay:']],
    [
      '23:7 sites.final plant.stations.bay: each station name once over all sites; got "bay" again, first in site coachworks',
    ],
  ],
  [
    'an option in a condition',
    [['when: stripe', 'when: strip']],
    ['43:35 route[3].when: no option of this name; got "strip"; did you mean "stripe"?'],
  ],
  [
    'a condition of yes for an option without yes',
    [['when: stripe', 'when: colour']],
    [
      '43:35 route[3].when: the values of option colour, such as { colour: ... }, since yes is none of them; got "colour"',
    ],
  ],
  [
    'a name beside a fault of another kind',
    [
      ['at: booth', 'at: both'],
      ['process: 50 min', 'process: 50'],
    ],
    [
      '32:9 route[0].at: no station of this name; got "both"; did you mean "booth"?',
      '36:38 route[1].process: a time with its unit (s, min, h, days), such as "50 min"; got 50',
    ],
  ],
  [
    'a feeder in a list',
    [['takes off: doors', 'takes off: [doors, door]']],
    ['44:66 route[4].takes off[1]: no feeder of this name; got "door"; did you mean "doors"?'],
  ],
  [
    'a value in a work factor',
    [['work: 20 min', 'work: 20 min\n    work factor: { colour: { pink: 1.2 } }']],
    ['40:30 route[2].work factor.colour.pink: no value of this name in option colour; got "pink"'],
  ],
  [
    'an option of a changeover',
    [['on: colour', 'on: color']],
    [
      '23:33 sites.final plant.stations.cell.changeover.on: no option of this name; got "color"; did you mean "colour"?',
    ],
  ],
  [
    'a value before a changeover',
    [['work: 15 min }', 'work: 15 min, from to: { rad: { white: 45 min } } }']],
    [
      '23:66 sites.final plant.stations.cell.changeover.from to.rad: no value of this name in option colour; got "rad"; did you mean "red"?',
    ],
  ],
  [
    'a value after a changeover',
    [['work: 15 min }', 'work: 15 min, from to: { red: { wite: 45 min } } }']],
    [
      '23:73 sites.final plant.stations.cell.changeover.from to.red.wite: no value of this name in option colour; got "wite"; did you mean "white"?',
    ],
  ],
  [
    'driving hours',
    [['hours: days }', 'hours: dais }']],
    ['28:90 lanes.ferry.hours: no calendar of this name; got "dais"; did you mean "days"?'],
  ],
  [
    'an option named like the usual chance',
    [['stripe: 35 %', 'stripe: 35 %, usual: 5 %']],
    [
      '6:64 programme.options.usual: another name for the option; usual is the word for the chance where no option matters; got "usual"',
    ],
  ],
];

describe('names', () => {
  it.each(cases)('reports %s that nothing defines, or that is misused', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
