import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/** Bad crews, calendars and steps of rule 3, and what is said of them; worded by hand, no outside source. */
const crew = (text: string): Edit => ['crews: { painters: 6 }', `crews: { painters: ${text} }`];
const overtime = (text: string): Edit => [
  'breaks: ["12:00-12:30"] }',
  `breaks: ["12:00-12:30"], overtime: [${text}] }`,
];
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'a list of headcounts that does not fit the shifts',
    [crew('{ headcount: [6, 3] }')],
    [
      '14:37 sites.coachworks.crews.painters.headcount: one number, or 1, one for each shift in the hours of calendar days; got a list of 2',
    ],
  ],
  [
    'no people on any shift',
    [crew('{ headcount: [0] }')],
    ['14:37 sites.coachworks.crews.painters.headcount: a headcount above 0 on some shift; got a list'],
  ],
  [
    'a headcount of nothing',
    [crew('{ headcount: 0 }')],
    ['14:37 sites.coachworks.crews.painters.headcount: a whole number from 1 to 1,000,000; got 0'],
  ],
  [
    'absence of everybody',
    [crew('{ headcount: 6, absence: 100 % }')],
    ['14:49 sites.coachworks.crews.painters.absence: a chance below 100 %; got "100 %"'],
  ],
  [
    'a misspelt hand-over',
    [crew('{ headcount: 6, hand over: waits }')],
    [
      '14:51 sites.coachworks.crews.painters.hand over: one of "next shift", "wait"; got "waits"; did you mean "wait"?',
    ],
  ],
  [
    'absence without shifts',
    [['fitters: { headcount: 4, calendar: days }', 'fitters: { headcount: 4, absence: 5 % }']],
    [
      '20:48 sites.final plant.crews.fitters.absence: a crew with a calendar, which says what its shifts are; give the crew or its site one; got none',
    ],
  ],
  [
    'more people than the largest shift has',
    [crew('{ headcount: [1] }'), ['crew: { painters: 1 }', 'crew: {}']],
    ['33:23 route[0].crew.painters: at most 1, the headcount of painters in site coachworks; got 2'],
  ],
  [
    'overtime inside the shift',
    [overtime('{ hours: ["14:00-16:00"] }')],
    ['8:80 calendars.days.overtime[0].hours: hours outside the shifts of the calendar; got some inside'],
  ],
  [
    'the same overtime twice',
    [overtime('{ hours: ["14:30-16:00"] }, { on: Mon, hours: ["15:00-17:00"] }')],
    [
      '8:117 calendars.days.overtime[1].hours: hours that no earlier entry of overtime has on the same days; entry 1 has some of them; got the same hours',
    ],
  ],
  [
    'overtime that ends before it begins',
    [overtime('{ from: 2027-06-07, to: 2027-06-01, hours: ["14:30-16:00"] }')],
    ['8:95 calendars.days.overtime[0].to: a day not before the first, 2027-06-07; got "2027-06-01"'],
  ],
  [
    'a decision without a rule',
    [overtime('{ hours: ["14:30-16:00"], decided: daily }')],
    [
      '8:106 calendars.days.overtime[0].decided: a rule `when` that is decided; overtime without one is always worked; got daily',
    ],
  ],
  [
    'a rule that knows no due date',
    [overtime('{ hours: ["14:30-16:00"], when: { units behind: 3 } }')],
    [
      '8:103 calendars.days.overtime[0].when: a lead time, or units with due dates: `due` in the build list or the opening, or `due after`; got neither',
    ],
  ],
  [
    'a rule by lead time and by due dates',
    [
      overtime(
        '{ hours: ["14:30-16:00"], when: { units behind: 3, lead time: 12 days, due within: 5 days } }',
      ),
    ],
    [
      '8:154 calendars.days.overtime[0].when.due within: either a lead time, or due dates with due within, not both; got both',
    ],
  ],
  [
    'a rule by due dates after a release that is drawn',
    [
      overtime('{ hours: ["14:30-16:00"], when: { units behind: 3 } }'),
      ['rate: [{ per day: 2 }, { from: 2027-06-07, per day: 4 }]', 'arrivals: 2 h\n  due after: 9 days'],
    ],
    [
      '9:103 calendars.days.overtime[0].when: due dates that are known beforehand, not `due after` a release that is drawn; got arrivals',
    ],
  ],
  [
    'a rule of a step that is none',
    [overtime('{ hours: ["14:30-16:00"], when: { units behind: 3, lead time: 12 days, at: inspekt } }')],
    [
      '8:146 calendars.days.overtime[0].when.at: no step of this name in the route of the unit; got "inspekt"; did you mean "inspect"?',
    ],
  ],
  [
    'a rule without a plan',
    [
      overtime('{ hours: ["14:30-16:00"], when: { units behind: 3, lead time: 12 days } }'),
      ['rate: [{ per day: 2 }, { from: 2027-06-07, per day: 4 }]', 'arrivals: 2 h'],
    ],
    [
      '8:103 calendars.days.overtime[0].when: a programme with a `rate`, which says when units are due; leave the rule out or give a rate; got none',
    ],
  ],
  [
    'a shutdown that ends before it begins',
    [
      [
        'breaks: ["12:00-12:30"] }',
        'breaks: ["12:00-12:30"], shutdowns: [{ from: 2027-07-30, to: 2027-07-12 }] }',
      ],
    ],
    ['8:96 calendars.days.shutdowns[0].to: a day not before the first; got "2027-07-12"'],
  ],
  [
    'an attended end of no process',
    [['step: bands, at: bay,', 'step: bands, at: bay, attended end: true,']],
    ['43:43 route[3].attended end: a process that ends; this step has none; got true'],
  ],
];

describe('small.yaml with', () => {
  it.each(cases)('%s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });

  it('shifts, overtime and shutdowns that are right is right', () => {
    expect(
      said(
        crew('{ headcount: [6], absence: 6 %, hand over: wait }'),
        overtime(
          '{ from: 2027-06-07, to: 2027-07-02, on: Mon-Thu, hours: ["14:30-16:30"], note: to catch up }, { on: Sat, hours: ["06:00-12:00"], when: { units behind: 3, lead time: 12 days, at: inspect }, decided: weekly }',
        ),
        ['at: oven, process: 50 min', 'at: oven, process: 50 min, attended end: true'],
      ),
    ).toEqual([]);
    expect(
      said([
        'breaks: ["12:00-12:30"] }',
        'breaks: ["12:00-12:30"], shutdowns: ["2027-07-12 to 2027-07-16", 2027-07-30, { from: 2027-08-02, to: 2027-08-02, note: stocktaking }] }',
      ]),
    ).toEqual([]);
  });
});
