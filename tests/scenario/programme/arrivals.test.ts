import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { programmeClock } from '../../../src/scenario/programme/clock.js';
import { askedRate } from '../../../src/scenario/programme/rates.js';
import { readScenario } from '../../../src/scenario/read.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { noRateReason } from '../../../src/study/rate/at-rate.js';
import { withHighestRate } from '../../../src/study/reliefs/changes.js';
import { enteredAt, playModel } from '../../flow/run-yaml.js';

/** A hall in Oslo, Monday to Friday 08:00-16:00, with much room. 1 March 2027 is a Monday. Worked by hand. */
const yaml = (programme: string, holidays = ''): string => `
scenario: arrivals
programme: { ${programme} }
calendars: { days: { hours: ["08:00-16:00"], holidays: [${holidays}] } }
sites: { hall: { zone: Europe/Oslo, calendar: days, stations: { bench: { places: 50 } } } }
route: [{ step: fit, at: bench, work: 1 min }]
`;
const read = (text: string, csv = '') => readScenario(text, 'arrivals.yaml', () => csv);
function scenarioOf(programme: string, holidays?: string, csv?: string) {
  const { scenario, problems } = read(yaml(programme, holidays), csv);
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  return scenario;
}
const entered = (programme: string, holidays?: string, csv?: string): number[] =>
  enteredAt(playModel(compile(scenarioOf(programme, holidays, csv)), 'clock', 1));
const said = (programme: string): string[] => (read(yaml(programme)).problems ?? []).map(sayProblem);
const START = 'start: 2027-03-01',
  DAY = 1440,
  H = 60;

describe('units that come at clock times', () => {
  it('come so many at each, inside the hours or not, in the order of the day', () => {
    expect(entered(`${START}, quantity: 5, arrivals: { at: ["13:00", "06:30"], units: 2 }`)).toEqual([
      390,
      390,
      13 * H,
      13 * H,
      DAY + 390,
    ]);
  });

  it('come on the weekdays given, not on a day off, for which there is no other', () => {
    // Monday, not Thursday 4 March, Monday 8 March.
    expect(
      entered(`${START}, quantity: 3, arrivals: { at: ["09:00"], on: "Mon, Thu" }`, '2027-03-04'),
    ).toEqual([9 * H, 7 * DAY + 9 * H, 10 * DAY + 9 * H]);
  });

  it('keep the clock of the site, in summer time too, whatever the zone of the programme', () => {
    // Friday 26 March 09:00 in Oslo is 08:00 UTC, Monday 29 March 09:00 is 07:00 UTC.
    expect(entered('start: 2027-03-26, zone: UTC, quantity: 2, arrivals: { at: ["09:00"] }')).toEqual([
      8 * H,
      3 * DAY + 7 * H,
    ]);
  });

  it('are numbered with those of the opening and of the build list, which come besides on days of their own', () => {
    const csv = 'build,release\nA,\nB,2027-03-02\n';
    // Of four units one stands there, A comes in its turn, B with the first minute of Tuesday, one is drawn.
    expect(
      entered(
        `${START}, quantity: 4, build list: list.csv, opening: [{ at: fit }], arrivals: { at: ["09:00"] }`,
        '',
        csv,
      ),
    ).toEqual([0, 9 * H, DAY + 8 * H, DAY + 9 * H]);
  });

  it('are due so long after they come', () => {
    const { run } = playModel(
      compile(scenarioOf(`${START}, quantity: 2, due after: 5 h, arrivals: { at: ["09:00", "10:00"] }`)),
      'clock',
      1,
    );
    expect([...run.dueAt]).toEqual([14 * H, 15 * H]);
  });

  it('end with the run, and with a length go on to its end', () => {
    expect(entered(`${START}, until: 2027-03-03, arrivals: { at: ["09:00"] }`)).toHaveLength(2);
    expect(
      playModel(compile(scenarioOf(`${START}, length: 14 days, arrivals: { at: ["09:00"] }`)), 'clock', 1)
        .seen.shipped,
    ).toBe(10);
  });
});

describe('the rate of clock times', () => {
  const twice = scenarioOf(`${START}, quantity: 40, arrivals: { at: ["09:00", "13:00"] }`),
    onTwoDays = scenarioOf(
      `${START}, quantity: 40, arrivals: { at: ["09:00"], on: "Mon, Thu", units: 5 }`,
      '2027-03-11',
    );

  it('is counted a day, or a week where not on all days that are worked', () => {
    expect(askedRate(twice)).toMatchObject({ highest: 2, highestIsPerWeek: false });
    expect(askedRate(onTwoDays)).toMatchObject({ highest: 2, highestIsPerWeek: true });
    const all = scenarioOf(`${START}, quantity: 40, arrivals: { at: ["09:00"], on: Mon-Fri, units: 2 }`);
    expect(askedRate(all)).toMatchObject({ highest: 2, highestIsPerWeek: false });
    // Thursday of the second week is off: 5 units on its four days.
    expect(programmeClock(onTwoDays).buckets.asked.slice(0, 3)).toEqual([2, 1.25, 2]);
  });

  it('is what check sets against what the stations can do', () => {
    // 480 min a day over 1 min, 50 places.
    const [row] = capacity(compile(twice), twice).rows;
    expect(row.load).toBeCloseTo(2 / (50 * 480), 12);
  });

  it('is raised by more units at each time, where a study asks for more', () => {
    const more = withHighestRate(twice, 3);
    // 1.5 at each: two, then one.
    expect([...compile({ ...more, programme: { ...more.programme, quantity: 6 } }).programme.times]).toEqual(
      [0, 1].flatMap((day) => [9 * H, 9 * H, 13 * H].map((time) => day * DAY + time)),
    );
  });

  it('cannot be looked for', () => {
    expect(noRateReason(twice)).toBe('one with `arrivals` at clock times');
  });
});

describe('clock times that are wrong', () => {
  it.each([
    ['{ at: [] }', ['3:62 programme.arrivals.at: at least one clock time; got an empty list']],
    ['{ at: ["9"] }', ['3:63 programme.arrivals.at[0]: a clock time, such as "08:00"; got "9"']],
    ['{ at: ["09:00", "09:00"] }', ['3:62 programme.arrivals.at: each clock time once; got a list']],
    [
      '{ at: ["09:00"], units: 0 }',
      ['3:80 programme.arrivals.units: a whole number from 1 to 1,000,000; got 0'],
    ],
    [
      '{ at: ["09:00"], on: Mo }',
      ['3:77 programme.arrivals.on: weekdays, such as "Mon-Fri", "Mon-Thu, Sat" or "every day"; got "Mo"'],
    ],
    [
      '{ at: ["09:00"], on: "Fri, Sat" }',
      [
        '3:77 programme.arrivals.on: weekdays on which the site of the first station works, by its calendar days; got Sat',
      ],
    ],
    [
      '{ on: Mon }',
      ['3:46 programme.arrivals.at: missing; should be a list of clock times, such as ["08:00", "13:00"]'],
    ],
    [
      '{ at: ["09:00"], unit: 2 }',
      ['3:73 programme.arrivals.unit: one of the keys at, on, units; got "unit"; did you mean "units"?'],
    ],
    [
      '["09:00"]',
      [
        '3:56 programme.arrivals: the word saturated, a time between units such as { exponential: { mean: 2 h } }, or clock times such as { at: ["07:00", "11:30"] }; got a list',
      ],
    ],
  ])('%s', (arrivals, expected) => {
    expect(said(`${START}, quantity: 4, arrivals: ${arrivals}`)).toEqual(
      expected.map((line) => `arrivals.yaml:${line}`),
    );
  });

  it('need a first day, and no rate beside them', () => {
    expect(said('quantity: 4, arrivals: { at: ["09:00"] }')).toEqual([
      'arrivals.yaml:3:1 programme.start: missing; should be a first day, such as "2027-03-01", with clock times',
    ]);
    expect(said(`${START}, quantity: 4, rate: { per day: 1 }, arrivals: { at: ["09:00"] }`)).toEqual([
      'arrivals.yaml:3:12 programme: exactly one of rate and arrivals; got both',
    ]);
  });
});
