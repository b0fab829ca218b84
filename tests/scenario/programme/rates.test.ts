import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { programmeClock } from '../../../src/scenario/programme/clock.js';
import { readScenario } from '../../../src/scenario/read.js';

/** Works in Oslo, Monday to Friday 06:00-14:00, without 6 May 2027 (Thursday of week 18). Worked by hand. */
const read = (rate: string, more = 'quantity: 30', start = '2027-04-26') =>
  readScenario(
    `
scenario: ramp
programme: { start: ${start}, rate: ${rate}, ${more} }
calendars: { days: { hours: ["06:00-14:00"], holidays: [2027-05-06] } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: unlimited } } } }
route: [{ step: build, at: bench, work: 1 h }]
`,
    'ramp.yaml',
    () => '',
  );
function planned(rate: string, more?: string, start?: string) {
  const { scenario, problems } = read(rate, more, start);
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  return {
    times: [...compile(scenario).programme.times],
    asked: programmeClock(scenario).buckets.asked.filter((each) => each !== null),
  };
}
/** Days after the start, and minutes after 06:00. */
const inDays = (times: readonly number[]): [number, number][] =>
  times.map((time) => [Math.floor(time / 1440), Math.round((time % 1440) - 360)]);
const said = (rate: string, start?: string): string[] =>
  (read(rate, undefined, start).problems ?? []).map((problem) => sayProblem(problem).replace(/^\S+ /, ''));

describe('a rate per week', () => {
  it('is spread evenly over the working days of the week, fewer in a week with a holiday', () => {
    const { times, asked } = planned('{ per week: 10 }', 'quantity: 20');
    // Week 17: two a day. Week 18 has four days: 2.5 a day, every 3.2 h.
    expect(inDays(times.slice(0, 4))).toEqual([
      [0, 0],
      [0, 240],
      [1, 0],
      [1, 240],
    ]);
    expect(inDays(times.slice(10))).toEqual([
      [7, 0],
      [7, 192],
      [7, 384],
      [8, 96],
      [8, 288],
      [9, 0],
      [9, 192],
      [9, 384],
      [11, 96],
      [11, 288],
    ]);
    expect(asked).toEqual([2, 2.5]);
  });

  it('that begins in the middle of a week has all its units on the days that are left', () => {
    // From Wednesday 28 April: 6 on three days; then per day.
    const { times, asked } = planned(
      '[{ per day: 1 }, { from: 2027-04-28, per week: 6 }, { from: 2027-05-03, per day: 4 }]',
      'quantity: 10',
    );
    expect(inDays(times)).toEqual([
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 240],
      [3, 0],
      [3, 240],
      [4, 0],
      [4, 240],
      [7, 0],
      [7, 120],
    ]);
    // Mean of the days of week 17: (1 + 1 + 2 + 2 + 2) / 5.
    expect(asked).toEqual([1.6, 4]);
  });

  it('can be listed week by week; a week that is not named goes on as the one before', () => {
    const { times, asked } = planned('{ weeks: { 2027-W17: 5, 2027-W19: 10 } }', 'quantity: 30');
    expect(asked.slice(0, 4)).toEqual([1, 1.25, 2, 2]);
    expect(times.filter((time) => time < 7 * 1440)).toHaveLength(5);
    expect(times.filter((time) => time >= 7 * 1440 && time < 14 * 1440)).toHaveLength(5);
    expect(times.filter((time) => time >= 14 * 1440 && time < 21 * 1440)).toHaveLength(10);
  });

  it('has its listed units in the first week also where the programme starts in the middle of it', () => {
    const { times } = planned('{ weeks: { 2027-W17: 4, 2027-W18: 4 } }', 'quantity: 8', '2027-04-29');
    expect(inDays(times.slice(0, 5))).toEqual([
      [0, 0],
      [0, 240],
      [1, 0],
      [1, 240],
      [4, 0],
    ]);
  });

  it.each<[string, string, readonly string[]]>([
    [
      'a week that is none',
      '{ weeks: { 2027-W54: 4 } }',
      ['programme.rate.weeks.2027-W54: an ISO week, such as 2027-W23; got "2027-W54"'],
    ],
    [
      'weeks out of order',
      '{ weeks: { 2027-W19: 4, 2027-W18: 5 } }',
      ['programme.rate.weeks.2027-W18: a week after the one before, 2027-W19; got "2027-W18"'],
    ],
    ['no week', '{ weeks: {} }', ['programme.rate.weeks: at least one week; got an empty map']],
    [
      'a rate by day and week',
      '{ per day: 2, per week: 10 }',
      ['programme.rate.per week: either per day or per week, not both; got both'],
    ],
    [
      'a rate of nothing',
      '{ from: 2027-04-26 }',
      ['programme.rate.per day: missing; should be a number from 0 to 100,000, or per week'],
    ],
    [
      'nothing at last',
      '[{ per week: 5 }, { from: 2027-05-10, per week: 0 }]',
      ['programme.rate: a rate above 0 per day at last, so that the run ends; got 0'],
    ],
  ])('%s is a problem', (_, rate, expected) => {
    expect(said(rate)).toEqual(expected);
  });

  it('weeks before the start are a problem', () => {
    expect(said('{ weeks: { 2027-W16: 4 } }')).toEqual([
      'programme.rate[0].from: a day not before the start of the programme, 2027-04-26; got "2027-04-19"',
    ]);
  });
});
