import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

const failing = (text: string): Edit => ['booth: { buffer: 2 }', `booth: { buffer: 2, failures: ${text} }`];
const outage = (text: string): Edit => ['defects: {', `outages:\n  - { ${text} }\ndefects: {`];

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'failures, one or several, and outages by day and by clock time',
    [
      failing(
        '[{ every: 60 h, repair: 2 h, hours: days }, { every: 9 days, by: calendar time, repair: 1 h }]',
      ),
      outage('stations: booth, from: 2027-08-09, to: 2027-08-20'),
      ['defects: {', 'defects: {'],
    ],
    [],
  ],
  [
    'an outage of one day, and one of a few hours',
    [
      outage(
        'site: final plant, lanes: [ferry], from: 2027-08-09, to: 2027-08-09 }\n  - { stations: [booth, oven], from: 2027-08-09 06:00, to: 2027-08-09 10:30',
      ),
    ],
    [],
  ],
  [
    'a failure without a repair',
    [failing('{ every: 60 h }')],
    [
      '16:27 sites.coachworks.stations.booth.failures.repair: missing; should be a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }',
    ],
  ],
  [
    'a way of counting that is none',
    [failing('{ every: 60 h, by: clock, repair: 2 h }')],
    [
      '16:56 sites.coachworks.stations.booth.failures.by: one of "operating time", "calendar time"; got "clock"',
    ],
  ],
  [
    'no time between failures',
    [failing('[{ every: 0 min, repair: 2 h }]')],
    [
      '16:47 sites.coachworks.stations.booth.failures[0].every: a time greater than 0 between failures; got 0',
    ],
  ],
  [
    'hours of repair that are no calendar',
    [failing('{ every: 60 h, repair: 2 h, hours: day }')],
    [
      '16:72 sites.coachworks.stations.booth.failures.hours: no calendar of this name; got "day"; did you mean "days"?',
    ],
  ],
  [
    'hours of repair in a list',
    [failing('[{ every: 60 h, repair: 2 h, hours: lat }]')],
    [
      '16:73 sites.coachworks.stations.booth.failures[0].hours: no calendar of this name; got "lat"; did you mean "late"?',
    ],
  ],
  [
    'an outage of nothing',
    [outage('from: 2027-08-09, to: 2027-08-20')],
    ['30:5 outages[0]: what is down: stations, a site or lanes; got none of them'],
  ],
  [
    'an outage of a site and of stations',
    [outage('stations: booth, site: coachworks, from: 2027-08-09, to: 2027-08-20')],
    ['30:30 outages[0].site: either stations or a site; got both'],
  ],
  [
    'an outage that ends before it begins',
    [outage('stations: booth, from: 2027-08-20, to: 2027-08-09')],
    ['30:46 outages[0].to: an end after the beginning, 2027-08-20; got "2027-08-09"'],
  ],
  [
    'an outage that ends when it begins',
    [outage('stations: booth, from: 2027-08-20 06:00, to: 2027-08-20 06:00')],
    ['30:52 outages[0].to: an end after the beginning, 2027-08-20 06:00; got "2027-08-20 06:00"'],
  ],
  [
    'an outage before the programme',
    [outage('stations: booth, from: 2027-02-01, to: 2027-02-05')],
    ['30:46 outages[0].to: an end not before the start of the programme, 2027-03-01; got "2027-02-05"'],
  ],
  [
    'an outage over two sites',
    [outage('stations: [booth, line], from: 2027-08-09, to: 2027-08-20')],
    [
      '30:17 outages[0].stations: stations of one site, whose zone the dates are in; write an outage for each site; got coachworks and final plant',
    ],
  ],
  [
    'a station twice',
    [outage('stations: [booth, booth], from: 2027-08-09, to: 2027-08-20')],
    ['30:25 outages[0].stations[1]: each of the stations once; got "booth" again'],
  ],
  [
    'a day that does not exist',
    [outage('stations: booth, from: 2027-02-30, to: 2027-08-20')],
    [
      '30:30 outages[0].from: a day, such as "2027-08-09", or a day and a clock time, such as "2027-08-09 06:00"; got "2027-02-30"',
    ],
  ],
  [
    'a clock time without a day',
    [outage('stations: booth, from: "06:00", to: 2027-08-20')],
    [
      '30:30 outages[0].from: a day, such as "2027-08-09", or a day and a clock time, such as "2027-08-09 06:00"; got "06:00"',
    ],
  ],
  [
    'names that nothing defines',
    [outage('stations: [both], lanes: fery, from: 2027-08-09, to: 2027-08-20')],
    [
      '30:18 outages[0].stations[0]: no station of this name; got "both"; did you mean "booth"?',
      '30:32 outages[0].lanes: no lane of this name; got "fery"; did you mean "ferry"?',
    ],
  ],
  [
    'a site that nothing defines',
    [outage('site: coachwork, from: 2027-08-09, to: 2027-08-20')],
    ['30:13 outages[0].site: no site of this name; got "coachwork"; did you mean "coachworks"?'],
  ],
];

describe('failures and outages', () => {
  it.each(cases)('%s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
