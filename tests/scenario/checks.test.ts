import { describe, expect, it } from 'vitest';
import { type Edit, said } from './read-small.js';

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'a send-back to another site to which no lane leads',
    [['back to: doors on', 'back to: prime']],
    [
      '51:92 route[7].fails.back to: a step in site final plant, where the unit is, or a lane that leads back: one from final plant to coachworks, or several one after the other; none does; got "prime", in site coachworks',
    ],
  ],
  [
    'a condition that no unit meets',
    [
      ['red: 70 %, white: 30 %', 'red: 100 %, white: 0 %'],
      ['when: stripe', 'when: { colour: white }'],
    ],
    ['43:35 route[3].when: a condition that some unit can meet; got colour: white, with a share of 0 %'],
  ],
  [
    'a step for rework that no loop passes',
    [['step: bands, at: bay,', 'step: bands, at: bay, rework: only,']],
    [
      '43:37 route[3].rework: a later step that sends units back to or past this one; without it a step with rework: only is never visited; got "only"',
    ],
  ],
  [
    'a send-back to a step that rework skips',
    [['at: booth', 'at: booth\n    rework: skip']],
    [
      '42:38 route[2].finds.runs.back to: a step that units in rework visit; got "prime", which has rework: skip',
    ],
  ],
  [
    'a feeder that nothing uses',
    [['parts: { axles: 2, doors: own }', 'parts: { doors: own }']],
    ['25:3 feeders.axles: a step with this feeder in its parts; no step has it'],
  ],
  [
    'own parts that nothing takes off',
    [
      [', takes off: doors', ''],
      ['axles: 2, doors: own', 'axles: 2'],
    ],
    [
      '26:3 feeders.doors: a step that takes these parts off and a later one with them in parts; no step does',
    ],
  ],
  [
    'more people than the crew has',
    [['crew: { painters: 2 }', 'crew: { painters: 7 }']],
    ['33:23 route[0].crew.painters: at most 6, the headcount of painters in site coachworks; got 7'],
  ],
  [
    'more parts than the stock may hold',
    [['axles: 2', 'axles: 3']],
    ['50:21 route[6].parts.axles: at most 2, the target stock of the feeder; got 3'],
  ],
  [
    'a lot larger than its station',
    [['most: 4', 'most: 5']],
    ['17:67 sites.coachworks.stations.oven.lot.most: at most 4, the places of the station; got 5'],
  ],
  [
    'a lot whose least is above its most',
    [['least: 2', 'least: 5']],
    ['17:58 sites.coachworks.stations.oven.lot.least: at most 4, the most of the lot; got 5'],
  ],
  [
    'a test that always fails',
    [
      ['chance: 4 %, back', 'chance: 100 %, back'],
      ['sample: 1 in 5, ', ''],
    ],
    [
      '51:62 route[7].fails.chance: a chance below 100 %: every unit would fail and go back until the limit; got 100 %',
    ],
  ],
  [
    'a defect that is always made and always found',
    [
      ['runs: 4 %', 'runs: 1'],
      ['chance: 90 %', 'chance: 1'],
    ],
    [
      '41:23 route[2].finds.runs.chance: a chance below 100 %: the defect is always made again, so every unit would go back until the limit; got 100 %',
    ],
  ],
  [
    'a test that always fails for some units, without a limit',
    [
      [
        'chance: 4 %, back to: doors on',
        'chance: { usual: 4 %, stripe: { yes: 100 % } }, back to: doors on, limit: unlimited',
      ],
    ],
    [
      '51:78 route[7].fails.chance: a chance below 100 %: some units would fail and go back for ever; got 100 %',
    ],
  ],
  [
    'a defect that some units always get again, without a limit',
    [
      ['runs: 4 %', 'runs: { usual: 4 %, stripe: { yes: 100 % } }'],
      ['chance: 90 %, back to: prime, limit: 3', 'chance: 100 %, back to: prime, limit: unlimited'],
    ],
    [
      '41:23 route[2].finds.runs.chance: a chance below 100 %: the defect is always made again, so some units would go back for ever; got 100 %',
    ],
  ],
  [
    'what to do at a limit that is none',
    [['back to: prime, limit: 3', 'back to: prime, limit: unlimited, at limit: scrap']],
    [
      '41:73 route[2].finds.runs.at limit: at limit only with a limit, which may not be unlimited; got "scrap"',
    ],
  ],
  [
    'a limit that is no count',
    [['back to: prime, limit: 3', 'back to: prime, limit: 1000001']],
    ['41:52 route[2].finds.runs.limit: a whole number from 1 to 1,000,000; got 1000001'],
  ],
  [
    'a test that scraps every unit',
    [
      ['fails: { chance: 4 %, back to: doors on }', 'fails: { chance: 1, scrap: true }'],
      ['sample: 1 in 5, ', ''],
    ],
    ['51:62 route[7].fails.chance: a chance below 100 %: every unit would be scrapped; got 100 %'],
  ],
  [
    'a defect that nothing finds',
    [['      runs: { chance: 90 %, back to: prime, limit: 3 }\n', '']],
    ['35:16 route[0].creates.runs: a defect that this or a later step finds; no step does'],
  ],
  [
    'an inspection of a defect that nothing makes',
    [['creates: { runs: 4 %, ', 'creates: { ']],
    ['41:7 route[2].finds.runs: a defect that this or an earlier step creates; no step does'],
  ],
  [
    'a step that fits in no shift',
    [['work: 3 h', 'work: 9 h']],
    [
      '43:91 route[3].in one shift: work of at most 480 min, the longest shift less its breaks; got at least 540 min',
    ],
  ],
  [
    'a crew that is never in with its station',
    [['calendar: days } }', 'calendar: days } }\n    calendar: late']],
    [
      '49:11 route[6].crew: a station and crews that are in at the same time in some hour of the week; got none',
    ],
  ],
  [
    'a rate from before the start',
    [['from: 2027-06-07', 'from: 2027-02-07']],
    [
      '5:34 programme.rate[1].from: a day not before the start of the programme, 2027-03-01; got "2027-02-07"',
    ],
  ],
  [
    'a second rate without a date',
    [['from: 2027-06-07, ', '']],
    ['5:26 programme.rate[1].from: missing; should be the first day of this rate'],
  ],
  [
    'two rates from the same day',
    [['from: 2027-06-07', 'from: 2027-03-01']],
    ['5:34 programme.rate[1].from: a day after that of the rate before, 2027-03-01; got "2027-03-01"'],
  ],
  [
    'a year of a rate that is typed wrong',
    [['from: 2027-06-07', 'from: 2072-06-07']],
    ['5:34 programme.rate[1].from: a day at most 20 years after 2027-03-01; got "2072-06-07"'],
  ],
  [
    'a last rate of nothing',
    [['per day: 4', 'per day: 0']],
    ['5:9 programme.rate: a rate above 0 per day at last, so that the run ends; got 0'],
  ],
  [
    'an end before the start',
    [['quantity: 40', 'until: 2027-02-01']],
    ['4:10 programme.until: a day after the start, 2027-03-01; got "2027-02-01"'],
  ],
  [
    'a number of own parts',
    [['doors: own }\n', 'doors: 1 }\n']],
    ['50:31 route[6].parts.doors: the word own, since these parts come off the unit itself; got 1'],
  ],
  [
    'own parts from a stock',
    [['axles: 2,', 'axles: own,']],
    ['50:21 route[6].parts.axles: a number, since these parts come from a stock; got "own"'],
  ],
  [
    'stock that is taken off',
    [['takes off: doors', 'takes off: axles']],
    [
      '44:58 route[4].takes off: a feeder of own parts (own: true); got "axles", a feeder of stock',
      '50:24 route[6].parts.doors: an earlier step that takes off doors; no step does',
    ],
  ],
  [
    'own parts that never rejoin',
    [[', doors: own }', ' }']],
    ['44:58 route[4].takes off: a later step with parts { doors: own }; no step has it; got "doors"'],
  ],
  [
    'own parts that rejoin only some units',
    [['step: doors on', 'step: doors on\n    when: stripe']],
    [
      '51:24 route[6].parts.doors: a step that every unit visits whose doors come off at "doors off"; got "doors on", with a narrower condition',
    ],
  ],
  [
    'a jump from site to site',
    [['  - lane: ferry\n', '']],
    [
      '46:9 route[5].at: a station in site coachworks, where the unit is, or a lane to site final plant before this step; got "line"',
    ],
  ],
  [
    'a lane that starts elsewhere',
    [['from: coachworks, to: final plant', 'from: final plant, to: coachworks']],
    [
      '26:73 feeders.doors.route[1]: an end in site final plant, where the part rejoins its unit; add a lane; got site coachworks',
      '26:81 feeders.doors.route[1].lane: a lane that starts in site coachworks, where the part is; got "ferry", from final plant',
      '45:11 route[5].lane: a lane that starts in site coachworks, where the unit is; got "ferry", from final plant',
      '47:9 route[6].at: a station in site coachworks, where the unit is, or a lane to site final plant before this step; got "line"',
    ],
  ],
  [
    'own parts that end in the wrong site',
    [[', { lane: ferry }]', ']']],
    [
      '26:31 feeders.doors.route[0]: an end in site final plant, where the part rejoins its unit; add a lane; got site coachworks',
    ],
  ],
  [
    'a break outside the shifts',
    [['12:00-12:30', '15:00-15:30']],
    ['8:44 calendars.days.breaks[0]: a break inside a shift; got "15:00-15:30"'],
  ],
  [
    'shifts that overlap',
    [['hours: ["06:00-14:30"]', 'hours: ["06:00-14:30", "14:00-22:00"]']],
    [
      '8:18 calendars.days.hours: shifts that do not overlap, nor with the shift of the next day; got 06:00-14:30 and 14:00-22:00',
    ],
  ],
  [
    'a night shift that runs into the next morning',
    [['hours: ["06:00-14:30"], breaks', 'hours: ["06:00-14:30", "22:00-07:00"], breaks']],
    [
      '8:18 calendars.days.hours: shifts that do not overlap, nor with the shift of the next day; got 22:00-07:00 and 06:00-14:30',
    ],
  ],
  [
    'a condition in a feeder of stock',
    [['at: line, work: 1 h }]', 'at: line, when: stripe, work: 1 h }]']],
    [
      '25:73 feeders.axles.route[0].when: no condition in a feeder of stock, whose sub-assemblies are not yet of a unit and have no options',
    ],
  ],
  [
    'own parts that rejoin twice',
    [['sample: 1 in 5,', 'parts: { doors: own },']],
    ['51:43 route[7].parts.doors: one step at which doors rejoin; got a second one'],
  ],
  [
    'own parts taken off in a feeder',
    [['step: trim doors, at: bay,', 'step: trim doors, at: bay, takes off: doors,']],
    ['26:71 feeders.doors.route[0].takes off: own parts only on the route of the unit; got "doors"'],
  ],
  [
    'own parts that rejoin at a sampled step',
    [['step: doors on', 'step: doors on\n    sample: 1 in 2']],
    ['51:24 route[6].parts.doors: a step that every unit visits; got "doors on", with a sample'],
  ],
  [
    'a feeder that needs its own parts',
    [['at: line, work: 1 h }]', 'at: line, parts: { axles: 1 }, work: 1 h }]']],
    ['25:82 feeders.axles.route[0].parts.axles: parts of another feeder than the one this step belongs to'],
  ],
  [
    'a factor by option in a feeder of stock',
    [['at: line, work: 1 h }]', 'at: line, work factor: { stripe: { yes: 2 } }, work: 1 h }]']],
    [
      '25:73 feeders.axles.route[0].work factor: nothing by option in a feeder of stock, whose sub-assemblies are not yet of a unit',
    ],
  ],
  [
    'breaks that leave nothing of a shift',
    [['["12:00-12:30"]', '["06:00-14:30"]']],
    [
      '8:43 calendars.days.breaks: breaks that leave working time in each shift; got none left in 06:00-14:30',
    ],
  ],
  [
    'a step that fits in no shift for one variety',
    [['work: 3 h, in one', 'work: 5 h, work factor: { stripe: { yes: 2 } }, in one']],
    [
      '43:128 route[3].in one shift: work of at most 480 min, the longest shift less its breaks; got at least 600 min',
    ],
  ],
  [
    'a changeover from a value to itself',
    [['work: 15 min }', 'work: 15 min, from to: { red: { red: 5 min, white: 45 min } } }']],
    [
      '23:73 sites.final plant.stations.cell.changeover.from to.red.red: a pair of two values; between units of one value there is no changeover; got "red" to "red"',
    ],
  ],
  [
    'a batch where no two units wait',
    [
      [
        'cell: { changeover: { on: colour, work: 15 min }',
        'cell: { buffer: 1, changeover: { on: colour, work: 15 min, batch: { most: 5 } }',
      ],
    ],
    [
      '23:66 sites.final plant.stations.cell.changeover.batch: a buffer of at least 2 spaces ahead of the station, to have a choice; got buffer: 1',
    ],
  ],
  [
    'a batch at a station that works on lots',
    [
      [
        'oven: { places: 4,',
        'oven: { changeover: { on: colour, work: 15 min, batch: { most: 5 } }, buffer: 4, places: 4,',
      ],
    ],
    [
      '17:55 sites.coachworks.stations.oven.changeover.batch: no batch by an option at a station with lots, whose units are taken together',
    ],
  ],
  [
    'a repair at a station that works on lots',
    [['process: 50 min }', 'process: 50 min, finds: { dirt: { chance: 80 %, repair: 5 min } } }']],
    [
      '36:77 route[1].finds.dirt.repair: no repair at "oven", which works on lots; give the inspection a station of its own',
    ],
  ],
  [
    'a failed test that is repaired at a station that works on lots',
    [['process: 50 min }', 'process: 50 min, fails: { chance: 4 %, repair: 5 min } }']],
    [
      '36:68 route[1].fails.repair: no repair at "oven", which works on lots; give the inspection a station of its own',
    ],
  ],
  [
    'a condition on an option with more values than can be told apart',
    [
      [
        'colour: { red: 70 %, white: 30 % }',
        `colour: { red: 69 %, white: 0 %, ${Array.from({ length: 31 }, (_, i) => `shade ${i}: 1 %`).join(', ')} }`,
      ],
      ['when: stripe', 'when: { colour: red }'],
    ],
    [
      '6:14 programme.options.colour: at most 32 values where a step has a condition on the option; merge values that are built alike; got 33',
    ],
  ],
];

describe('what cannot work', () => {
  it.each(cases)('reports %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
