import { describe, expect, it } from 'vitest';
import { OFF_SHIFT, UNATTENDED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 3, by hand. 1 March 2027 is a Monday; days of 7.5 h, 08:00-16:00 with a break 12:00-12:30. */
const DAY = 1440,
  H = 60;
const days = '{ hours: ["08:00-16:00"], on: Mon-Fri, breaks: ["12:00-12:30"] }';
const oneStep = (
  step: string,
  { start = '2027-03-01', calendar = days, zone = 'UTC', perDay = 1, quantity = 1 } = {},
): string => `
scenario: shifts
programme: { start: ${start}, rate: { per day: ${perDay} }, quantity: ${quantity} }
calendars: { days: ${calendar} }
sites: { hall: { zone: ${zone}, calendar: days, stations: { bench: { buffer: unlimited } } } }
route:
  - { step: fit, at: bench, ${step} }
`;

describe('work', () => {
  it('stops at the break and at night and goes on after them', () => {
    const played = play(oneStep('work: 10 h'));
    // 7.5 h on Monday, 2.5 h on Tuesday from 08:00.
    expect(shippedAt(played)).toEqual([DAY + 10.5 * H]);
    expect(minutesIn(played, 'bench', WORKING)).toBe(10 * H);
    // Off shift: 8 h, 0.5 h, 16 h.
    expect(minutesIn(played, 'bench', OFF_SHIFT)).toBe(24.5 * H);
  });

  it('waits over the weekend', () => {
    expect(shippedAt(play(oneStep('work: 10 h', { start: '2027-03-05' })))).toEqual([3 * DAY + 10.5 * H]);
  });

  it('waits over a holiday', () => {
    const calendar = '{ hours: ["08:00-16:00"], on: Mon-Fri, holidays: [2027-03-02] }';
    expect(shippedAt(play(oneStep('work: 10 h', { calendar })))).toEqual([2 * DAY + 10 * H]);
  });

  it('counts an hour less to a Monday morning after the clocks go forward', () => {
    // Oslo, Sunday 28 March 2027, 02:00 becomes 03:00. Friday 8 h, Monday 2 h from 08:00 local.
    const calendar = '{ hours: ["08:00-16:00"], on: Mon-Fri }';
    expect(
      shippedAt(play(oneStep('work: 10 h', { start: '2027-03-26', calendar, zone: 'Europe/Oslo' }))),
    ).toEqual([3 * DAY + 10 * H - H]);
  });

  it('has seven hours in a night shift of that night', () => {
    // Saturday 22:00 to Sunday 06:00 are 7 h, ending at 1740; the next shift begins 16 h later, at 2700; 3 h
    // of it are left to do.
    const calendar = '{ hours: ["22:00-06:00"], on: every day }';
    expect(
      shippedAt(play(oneStep('work: 10 h', { start: '2027-03-27', calendar, zone: 'Europe/Oslo' }))),
    ).toEqual([2700 + 3 * H]);
  });

  it('in one shift starts only where it can end in it', () => {
    // 5 h: unit 1 08:00-13:30; unit 2 would have 2.5 h left and starts on Tuesday.
    const played = play(oneStep('work: 5 h, in one shift: true', { perDay: 2, quantity: 2 }));
    expect(shippedAt(played)).toEqual([13.5 * H, DAY + 13.5 * H]);
    expect(minutesIn(played, 'bench', WORKING)).toBe(10 * H);
  });
});

describe('process and settle', () => {
  it('go on through the night', () => {
    const played = play(oneStep('work: 7.5 h, process: 50 min'));
    expect(shippedAt(played)).toEqual([16 * H + 50]);
    expect(minutesIn(played, 'bench', UNATTENDED)).toBe(50);
  });

  it('leave the next work for the morning', () => {
    // Work 08:00-15:30, settle to 01:30; work Tuesday 08:00-15:30, settle to Wednesday 01:30.
    const played = play(oneStep('passes: { count: 2, work: 7 h, settle: 10 h }'));
    expect(shippedAt(played)).toEqual([2 * DAY + 1.5 * H]);
    expect(minutesIn(played, 'bench', UNATTENDED)).toBe(20 * H);
  });
});

describe('a crew with a calendar of its own', () => {
  it('works while both it and the station are in', () => {
    // Station 08:00-16:00, crew 10:00-18:00: 6 h a day. 8 h of work: 10:00-16:00 and 10:00-12:00.
    const played = play(`
scenario: two calendars
programme: { start: 2027-03-01, rate: { per day: 1 }, quantity: 1 }
calendars: { early: { hours: ["08:00-16:00"], on: Mon-Fri }, late: { hours: ["10:00-18:00"], on: Mon-Fri } }
sites: { hall: { calendar: early, crews: { fitters: { headcount: 1, calendar: late } }, stations: { bench: {} } } }
route: [{ step: fit, at: bench, crew: { fitters: 1 }, work: 8 h }]
`);
    expect(shippedAt(played)).toEqual([DAY + 12 * H]);
  });
});
