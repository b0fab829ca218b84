import { describe, expect, it } from 'vitest';
import { type Edit, SECTIONS, said } from './read-small.js';

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'a station without places',
    [['booth: { buffer: 2 }', 'booth: { places: 0 }']],
    ['16:24 sites.coachworks.stations.booth.places: a whole number from 1 to 1,000,000; got 0'],
  ],
  [
    'a misspelt key',
    [['buffer: 2 }', 'bufer: 2 }']],
    [
      '16:16 sites.coachworks.stations.booth.bufer: one of the keys places, buffer, rework buffer, unattended, calendar, changeover, lot, failures, people; got "bufer"; did you mean "buffer"?',
    ],
  ],
  [
    'a changeover without its usual time',
    [['{ on: colour, work: 15 min }', '{ on: colour, from to: { red: { white: 45 min } } }']],
    [
      '23:27 sites.final plant.stations.cell.changeover: a changeover with the key work, or with process where it passes by itself; got neither',
    ],
  ],
  [
    'a batch without its most',
    [['work: 15 min }', 'work: 15 min, batch: { longest wait: 2 h } }']],
    [
      '23:55 sites.final plant.stations.cell.changeover.batch.most: missing; should be a whole number from 1 to 1,000,000',
    ],
  ],
  [
    'a time between values without unit',
    [['work: 15 min }', 'work: 15 min, from to: { red: { white: 45 } } }']],
    [
      '23:80 sites.final plant.stations.cell.changeover.from to.red.white: a time with its unit (s, min, h, days), such as "45 min"; got 45',
    ],
  ],
  [
    'a time straight after a value',
    [['work: 15 min }', 'work: 15 min, from to: { red: 45 min } }']],
    [
      '23:71 sites.final plant.stations.cell.changeover.from to.red: times by the value that comes next, such as { white: 45 min }; got "45 min"',
    ],
  ],
  [
    'a misspelt section, without a storm of unknown names',
    [['calendars:', 'calenders:']],
    [`7:1 calenders: one of the keys ${SECTIONS}; got "calenders"; did you mean "calendars"?`],
  ],
  [
    'a time without unit',
    [['process: 50 min', 'process: 50']],
    ['36:38 route[1].process: a time with its unit (s, min, h, days), such as "50 min"; got 50'],
  ],
  [
    'a time without unit in quotes',
    [['process: 50 min', 'process: "50"']],
    ['36:38 route[1].process: a time with its unit (s, min, h, days), such as "50 min"; got "50"'],
  ],
  [
    'a unit that is spelt out',
    [['process: 50 min', 'process: 50 minutes']],
    ['36:38 route[1].process: a time with its unit (s, min, h, days), such as "50 min"; got "50 minutes"'],
  ],
  [
    'a bare number among three points',
    [['low: 35 min', 'low: 35']],
    ['34:18 route[0].work.low: a time with its unit (s, min, h, days), such as "35 min"; got 35'],
  ],
  [
    'a negative time',
    [['process: 50 min', 'process: -5 min']],
    ['36:38 route[1].process: a time that is not negative; got "-5 min"'],
  ],
  [
    'a list where a time belongs',
    [['process: 50 min', 'process: [1, 2]']],
    [
      '36:38 route[1].process: a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }; got a list',
    ],
  ],
  [
    'nothing where a time belongs',
    [['process: 50 min', 'process:']],
    [
      '36:38 route[1].process: a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }; got nothing',
    ],
  ],
  [
    'a time of geological length',
    [['process: 50 min', 'process: 99999999 days']],
    ['36:38 route[1].process: a time of at most 100 years; got "99999999 days"'],
  ],
  [
    'a misspelt key of a time',
    [['likely: 42 min', 'likly: 42 min']],
    [
      '34:26 route[0].work.likly: one of the keys low, likely, high, shape, mean, cv, sd, constant, uniform, triangular, pert, exponential, erlang, gamma, lognormal, normal, discrete, weibull, mixture, observed, column, unit; got "likly"; did you mean "likely"?',
    ],
  ],
  [
    'a misspelt form of a time',
    [['process: 50 min', 'process: { gama: { mean: 3 min, cv: 1 } }']],
    [
      '36:40 route[1].process.gama: one of the keys low, likely, high, shape, mean, cv, sd, constant, uniform, triangular, pert, exponential, erlang, gamma, lognormal, normal, discrete, weibull, mixture, observed, column, unit; got "gama"; did you mean "gamma"?',
    ],
  ],
  [
    'a bare number inside a named form',
    [['process: 50 min', 'process: { gamma: { mean: 3, cv: 1 } }']],
    ['36:55 route[1].process.gamma.mean: a time with its unit (s, min, h, days), such as "3 min"; got 3'],
  ],
  [
    'a span of times without its end',
    [['low: 35 min, likely: 42 min, high: 60 min', 'low: 35 min']],
    ['34:5 route[0].work.high: missing; should be a time, such as "20 min"; units are s, min, h, days'],
  ],
  [
    'three points out of order',
    [['low: 35 min', 'low: 85 min']],
    [
      '34:11 route[0].work: times in order: low below high, likely between them; got a map of low, likely, high',
    ],
  ],
  [
    'a Weibull without scale',
    [['process: 50 min', 'process: { weibull: { shape: 1 } }']],
    [
      '36:40 route[1].process.weibull.scale: missing; should be a time, such as "20 min"; units are s, min, h, days',
    ],
  ],
  [
    'a cut normal whose ends are swapped',
    [['process: 50 min', 'process: { normal: { mean: 5 min, sd: 1 min, low: 9 min, high: 3 min } }']],
    [
      '36:48 route[1].process.normal: times in order: low below high, likely between them; got a map of mean, sd, low, high',
    ],
  ],
  [
    'discrete times whose chances do not add up',
    [['process: 50 min', 'process: { discrete: { 10 min: 20 %, 30 min: 70 % } }']],
    ['36:50 route[1].process.discrete: chances that add up to 100 %; got a map of 10 min, 30 min'],
  ],
  [
    'a discrete time without unit',
    [['process: 50 min', 'process: { discrete: { 10: 20 %, 30 min: 80 % } }']],
    [
      '36:52 route[1].process.discrete.10: a time with its unit (s, min, h, days), such as "10 min"; got "10"',
    ],
  ],
  [
    'half a phase',
    [['process: 50 min', 'process: { erlang: { mean: 3 min, phases: 1.5 } }']],
    ['36:71 route[1].process.erlang.phases: a whole number from 1 to 1,000; got 1.5'],
  ],
  [
    'a CSV file that is not there',
    [['process: 50 min', 'process: { observed: none.csv, column: minutes, unit: min }']],
    ['36:50 route[1].process.observed: a CSV file that can be read (no such file); got "none.csv"'],
  ],
  [
    'a column that the CSV file lacks',
    [['process: 50 min', 'process: { observed: bad.csv, column: minuts, unit: min }']],
    [
      'bad.csv:1:1 route[1].process: a column with the heading "minuts"; got the headings unit, minutes; did you mean "minutes"?',
    ],
  ],
  [
    'a cell of the CSV file that is no number',
    [['process: 50 min', 'process: { observed: bad.csv, column: minutes, unit: min }']],
    [
      'bad.csv:3:1 route[1].process: a number in column "minutes", not negative, with a decimal point; got "x"',
    ],
  ],
  [
    'a quote in the CSV file that never ends',
    [['process: 50 min', 'process: { observed: quote.csv, column: minutes, unit: min }']],
    [
      'quote.csv:2:1 route[1].process: valid CSV (quote not closed: the parsing is finished with an opening quote at line 2)',
    ],
  ],
  [
    'an empty CSV file',
    [['process: 50 min', 'process: { observed: empty.csv, column: minutes, unit: min }']],
    ['empty.csv:1:1 route[1].process: a heading line and at least one time; got an empty file'],
  ],
  [
    'a unit of observed times that is none',
    [['process: 50 min', 'process: { observed: bad.csv, column: minutes, unit: minutes }']],
    ['36:82 route[1].process.unit: one of "s", "min", "h", "days"; got "minutes"'],
  ],
  [
    'a percentage without its sign',
    [['runs: 4 %', 'runs: 4']],
    ['35:22 route[0].creates.runs: a chance, such as "4 %", or a number from 0 to 1; got 4'],
  ],
  [
    'a chance above one',
    [['runs: 4 %', 'runs: 140 %']],
    ['35:22 route[0].creates.runs: a chance of at most 100 %; got "140 %"'],
  ],
  [
    'a word where a chance belongs',
    [['runs: 4 %', 'runs: often']],
    ['35:22 route[0].creates.runs: a chance, such as "8 %", or a number from 0 to 1; got "often"'],
  ],
  [
    'a chance by option without the usual one',
    [['{ usual: 6 %, colour', '{ colour']],
    [
      '35:27 route[0].creates.dirt.usual: missing; should be a chance, such as "8 %", or a number from 0 to 1',
    ],
  ],
  [
    'shares that do not add up',
    [['red: 70 %, white: 30 %', 'red: 70 %, white: 20 %']],
    ['6:22 programme.options.colour: shares that add up to 100 %; got a map of red, white'],
  ],
  [
    'a share that is a word',
    [['red: 70 %, white: 30 %', 'red: 70 %, white: lots']],
    ['6:42 programme.options.colour.white: a chance, such as "8 %", or a number from 0 to 1; got "lots"'],
  ],
  [
    'a key given twice',
    [['at: booth', 'at: booth\n    at: bay']],
    ['33:5 route[0].at: each key once in a map; got "at" again'],
  ],
  [
    'a lane without trucks',
    [['trucks: 1', 'trucks: 0']],
    ['28:55 lanes.ferry.trucks: a whole number from 1 to 1,000,000; got 0'],
  ],
  [
    'a run without end',
    [['  quantity: 40\n', '']],
    [
      '3:3 programme: an end of the run: a quantity, a date until, or for a steady-state run a length; got none of them',
    ],
  ],
  [
    'a quantity together with a length',
    [['  quantity: 40\n', '  quantity: 40\n  length: 50 h\n']],
    ['5:11 programme.length: either a quantity or a length, not both; got both'],
  ],
  [
    'a programme without rate and arrivals',
    [['  rate: [{ per day: 2 }, { from: 2027-06-07, per day: 4 }]\n', '']],
    ['3:3 programme: exactly one of rate and arrivals; got neither'],
  ],
  [
    'a rate without first day',
    [['  start: 2027-03-01\n', '']],
    ['2:1 programme.start: missing; should be a first day, such as "2027-03-01", with rate or until'],
  ],
  [
    'a day that does not exist',
    [['start: 2027-03-01', 'start: 2027-02-30']],
    [
      '3:10 programme.start: a day of the calendar, such as "2027-03-01", in the years 1900 to 2199; got "2027-02-30"',
    ],
  ],
  [
    'a day in words',
    [['start: 2027-03-01', 'start: 1 March 2027']],
    ['3:10 programme.start: a day of the calendar, such as "2027-03-01"; got "1 March 2027"'],
  ],
  [
    'a warm-up of a run that is not steady',
    [['quantity: 40', 'quantity: 40\n  warm up: 3 h']],
    ['5:12 programme.warm up: a warm up only together with a length; got no length'],
  ],
  [
    'shifts that are no clock times',
    [['"06:00-14:30"', '"6-14"']],
    ['8:19 calendars.days.hours[0]: clock times, such as "06:00-14:30"; got "6-14"'],
  ],
  [
    'weekdays in other words',
    [['days: {', 'days: { on: Mo-Fr,']],
    ['8:15 calendars.days.on: weekdays, such as "Mon-Fri", "Mon-Thu, Sat" or "every day"; got "Mo-Fr"'],
  ],
  [
    'a holiday that ends before it starts',
    [['days: {', 'days: { holidays: [2027-07-30 to 2027-07-12],']],
    [
      '8:22 calendars.days.holidays[0]: a span of days whose end is not before its start; got "2027-07-30 to 2027-07-12"',
    ],
  ],
  [
    'a misspelt time zone',
    [['Europe/Oslo', 'Europe/Olso']],
    [
      '12:11 sites.coachworks.zone: a time zone of the IANA list, such as "Europe/Oslo", or UTC; got "Europe/Olso"; did you mean "Europe/Oslo"?',
    ],
  ],
  [
    'a find with two consequences',
    [['repair: 25 min', 'repair: 25 min, scrap: true']],
    [
      '42:13 route[2].finds.dirt: exactly one of repair, back to, carry and scrap: true; got repair and scrap',
    ],
  ],
  [
    'a find without consequence',
    [[', repair: 25 min', '']],
    ['42:13 route[2].finds.dirt: exactly one of repair, back to, carry and scrap: true; got none of them'],
  ],
  [
    'a limit of a repair',
    [[', repair: 25 min', ', repair: 25 min, limit: 3']],
    ['42:52 route[2].finds.dirt.limit: limit only together with back to; got 3'],
  ],
  [
    'work beside passes',
    [['work: 20 min', 'work: 20 min\n    passes: { count: 1, work: 3 min }']],
    ['40:13 route[2].passes: either work or passes; the work of a pass stands inside passes; got both'],
  ],
  [
    'a sample in other words',
    [['1 in 5', 'every 5']],
    ['51:42 route[7].sample: a sample, such as 1 in 5; got "every 5"'],
  ],
  [
    'a misspelt word',
    [['step: bands, at: bay,', 'step: bands, at: bay, rework: onyl,']],
    ['43:37 route[3].rework: one of "both", "skip", "only"; got "onyl"; did you mean "only"?'],
  ],
  [
    'an empty entry of a route',
    [['- lane: ferry', '-']],
    [
      '45:4 route[5]: a step { step: ..., at: ... }, a lane { lane: ... } or steps side by side { at: ..., side by side: [...] }; got nothing',
    ],
  ],
  [
    'a bare text as entry of a route',
    [['- lane: ferry', '- ferry']],
    [
      '45:5 route[5]: a step { step: ..., at: ... }, a lane { lane: ... } or steps side by side { at: ..., side by side: [...] }; got "ferry"',
    ],
  ],
  [
    'an entry that is a step and a lane',
    [['- lane: ferry', '- { lane: ferry, step: x, at: bay }']],
    [
      '45:5 route[5]: a step { step: ..., at: ... }, a lane { lane: ... } or steps side by side { at: ..., side by side: [...] }; got a map of lane, step, at',
    ],
  ],
  [
    'a step without station',
    [['    at: booth\n', '']],
    ['31:5 route[0].at: missing; should be the name of a station'],
  ],
  [
    'an alias of nothing, once',
    [['at: booth', 'at: *booth']],
    ['32:9 route[0].at: an alias of an anchor that stands earlier in the file; got *booth'],
  ],
  ['a YAML tag', [['at: booth', 'at: !here booth']], ['32:9 valid YAML: unresolved tag: !here']],
  [
    'YAML that does not close a list',
    [['zone: Europe/Oslo', 'zone: [Europe/Oslo']],
    [
      '13:5 valid YAML: flow sequence in block collection must be sufficiently indented and end with a ]',
      '13:15 valid YAML: nested mappings are not allowed in compact mappings',
      '13:15 valid YAML: implicit keys need to be on a single line',
    ],
  ],
  [
    'a tab as indentation',
    [['    zone: Europe/Oslo', '	zone: Europe/Oslo']],
    [
      '12:1 valid YAML: tabs are not allowed as indentation',
      '12:8 valid YAML: nested mappings are not allowed in compact mappings',
      '12:8 valid YAML: implicit keys need to be on a single line',
      '13:15 valid YAML: nested mappings are not allowed in compact mappings',
      '13:15 valid YAML: implicit keys need to be on a single line',
      '15:1 valid YAML: all mapping items must start at the same column',
      '19:1 valid YAML: all mapping items must start at the same column',
    ],
  ],
  [
    'a name that is reserved',
    [['runs: {}, dirt: {}', 'runs: {}, dirt: {}, constructor: {}']],
    ['29:32 defects: another name, this one is reserved; got "constructor"'],
  ],
  [
    'a feeder of own parts and stock',
    [['own: true', 'own: true, stock: 2']],
    ['26:10 feeders.doors: exactly one of stock and own: true; got both'],
  ],
  [
    'more parts at the start than the stock holds',
    [['at start: 1', 'at start: 3']],
    ['25:32 feeders.axles.at start: at most the target stock, 2'],
  ],
  [
    'a misspelt key of two words',
    [['takes off: doors', 'take off: doors']],
    [
      '44:47 route[4].take off: one of the keys step, at, when, crew, equipment, work, passes, work factor, learning, process, attended end, in one shift, setting, rework, sample, parts, takes off, wait for parts, creates, finds, fails, hold, compares with; got "take off"; did you mean "takes off"?',
    ],
  ],
  [
    'half a painter',
    [['painters: 6', 'painters: 1.5']],
    [
      '14:24 sites.coachworks.crews.painters: a headcount from 1, such as 6, or { headcount: 6, calendar: days }; got 1.5',
    ],
  ],
  [
    'a misspelt unlimited',
    [['buffer: unlimited', 'buffer: unlimted']],
    [
      '22:23 sites.final plant.stations.line.buffer: a whole number from 0, or unlimited; got "unlimted"; did you mean "unlimited"?',
    ],
  ],
  [
    'a misspelt stations, without a storm of unknown stations',
    [['    stations:\n      booth', '    statons:\n      booth']],
    [
      '15:5 sites.coachworks.statons: one of the keys zone, calendar, crews, equipment, stations; got "statons"; did you mean "stations"?',
    ],
  ],
  ['a second document', [['defects:', '---\ndefects:']], ['29:1 one document in a file; got a second one']],
  [
    'an empty map for a time',
    [['process: 50 min', 'process: {}']],
    [
      '36:38 route[1].process: a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }; got an empty map',
    ],
  ],
  [
    'a number where the CSV file is named',
    [['process: 50 min', 'process: { observed: 3 }']],
    [
      '36:29 route[1].process.column: missing; should be the heading of a column',
      '36:29 route[1].process.unit: missing; should be one of "s", "min", "h", "days"',
      '36:50 route[1].process.observed: the name of a CSV file; got 3',
    ],
  ],
  [
    'a shape that is not among those of the form',
    [['high: 60 min }', 'high: 60 min, shape: triangle }']],
    ['34:63 route[0].work.shape: one of "pert", "triangular"; got "triangle"'],
  ],
  [
    'a misspelt key once, not its echoes',
    [['back to: prime', 'bak to: prime']],
    [
      '41:29 route[2].finds.runs.bak to: one of the keys chance, repair, back to, by, limit, at limit, scrap, carry; got "bak to"; did you mean "back to"?',
    ],
  ],
  [
    'two forms of time in one',
    [['high: 60 min }', 'high: 60 min, cv: 0.3 }']],
    [
      '34:11 route[0].work: a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }; got a map of low, likely, high, cv',
    ],
  ],
  [
    'a section with nothing in it',
    [['defects: { runs: {}, dirt: {} }', 'defects:']],
    ['29:9 defects: kinds of defect by name, such as { runs: {} }; got nothing'],
  ],
  [
    'a departure that is no clock time',
    [['hours: days }', 'hours: days, leaves: { at: ["8"] } }']],
    ['28:111 lanes.ferry.leaves.at[0]: a clock time, such as "08:00"; got "8"'],
  ],
  [
    'a misspelt departure rule',
    [['hours: days }', 'hours: days, leaves: when ful }']],
    [
      '28:104 lanes.ferry.leaves: when full, { at: ["08:00"] } or { when full or after: 4 h }; got "when ful"; did you mean "when full"?',
    ],
  ],
  [
    'a number for a name',
    [['scenario: Two plants', 'scenario: 42']],
    ['1:11 scenario: the name of the scenario; got 42'],
  ],
];

describe('what is written', () => {
  it.each(cases)('reports %s with its line and what would be right', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
