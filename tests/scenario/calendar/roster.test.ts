import { describe, expect, it } from 'vitest';
import { modelOf } from '../../flow/run-yaml.js';

/** Windows of calendars with overtime, by hand; 1 March 2027 is a Monday. */
const H = 60,
  DAY = 1440;
const calendarOf = (calendar: string, zone = 'UTC', start = '2027-03-01') =>
  modelOf(`
scenario: calendar
programme: { start: ${start}, rate: { per day: 1 }, quantity: 1 }
calendars: { days: ${calendar} }
sites: { hall: { zone: ${zone}, calendar: days, stations: { bench: {} } } }
route: [{ step: fit, at: bench, work: 1 h }]
`).calendars[0];
const rows = (calendar: string, count: number, ...rest: string[]): number[][] => {
  const { start, end, shiftEnd, overtime, rules } = calendarOf(calendar, ...rest);
  return Array.from({ length: count }, (_, w) => [
    start[w] / H,
    end[w] / H,
    shiftEnd[w] / H,
    overtime[w],
    rules[w],
  ]);
};

describe('overtime in a calendar', () => {
  it('belongs to the shift it follows, or comes before, to its end', () => {
    expect(
      rows('{ hours: ["07:00-15:00"], overtime: [{ hours: ["15:00-17:00"], to: 2027-03-01 }] }', 3),
    ).toEqual([
      [7, 15, 17, 0, 0],
      [15, 17, 17, 1, 0],
      [31, 39, 39, 0, 0],
    ]);
    expect(
      rows('{ hours: ["07:00-15:00"], overtime: [{ hours: ["05:00-07:00", "15:00-16:00"], on: Mon }] }', 4),
    ).toEqual([
      [5, 7, 16, 1, 0],
      [7, 15, 16, 0, 0],
      [15, 16, 16, 1, 0],
      [31, 39, 39, 0, 0],
    ]);
  });

  it('of a rule has its bit, one for each entry that has a rule', () => {
    const when = 'when: { units behind: 1, lead time: 1 day }';
    expect(
      rows(
        `{ hours: ["07:00-15:00"], on: Mon, overtime: [{ hours: ["15:00-16:00"] }, { hours: ["16:00-17:00"], ${when} }, { on: Sat, hours: ["07:00-09:00"], ${when} }] }`,
        4,
      ),
    ).toEqual([
      [7, 15, 17, 0, 0],
      [15, 16, 17, 1, 0],
      [16, 17, 17, 1, 1],
      [127, 129, 129, 1, 2],
    ]);
  });

  it('of a night shift of the eve begins where that ends, and takes its breaks', () => {
    expect(
      rows(
        '{ hours: ["22:00-06:00"], on: Mon, breaks: ["07:00-07:30"], overtime: [{ hours: ["06:00-08:00"], on: Tue }] }',
        3,
      ),
    ).toEqual([
      [22, 30, 32, 0, 0],
      [30, 31, 32, 1, 0],
      [31.5, 32, 32, 1, 0],
    ]);
  });

  it('keeps to the wall clock when that changes', () => {
    // Oslo, Sunday 28 March 2027: 02:00 is 03:00. Sunday work 06:00-10:00 begins 5 h after midnight.
    expect(
      rows(
        '{ hours: ["07:00-15:00"], on: Sat, overtime: [{ on: Sun, hours: ["06:00-10:00"] }] }',
        2,
        'Europe/Oslo',
        '2027-03-27',
      ),
    ).toEqual([
      [7, 15, 15, 0, 0],
      [DAY / H + 5, DAY / H + 9, DAY / H + 9, 1, 0],
    ]);
  });
});
