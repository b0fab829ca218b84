import { describe, expect, it } from 'vitest';
import { MINUTES_PER_DAY } from '../../../src/flow/model/time.js';
import { dayNumber, isoDate } from '../../../src/scenario/calendar/date.js';
import { type WorkingDay, workingDays } from '../../../src/scenario/calendar/days.js';
import { calendarColumns, intersection } from '../../../src/scenario/calendar/roster.js';
import { ZoneClock } from '../../../src/scenario/calendar/zone.js';
import type { CalendarSpec } from '../../../src/scenario/types/calendars.js';

const clockTime = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
function spec(
  hours: readonly string[],
  more: { breaks?: readonly string[]; on?: readonly number[]; holidays?: CalendarSpec['holidays'] } = {},
): CalendarSpec {
  const spans = (list: readonly string[]) =>
    list.map((span) => ({ startMin: clockTime(span.slice(0, 5)), endMin: clockTime(span.slice(6)) }));
  return {
    hours: spans(hours),
    breaks: spans(more.breaks ?? []),
    on: more.on ?? [1, 2, 3, 4, 5],
    holidays: more.holidays ?? [],
    shutdowns: [],
    overtime: [],
  };
}

function days(
  calendar: CalendarSpec | undefined,
  zone: string,
  from: string,
  to: string,
  originDay = from,
): WorkingDay[] {
  const first = dayNumber(from),
    last = dayNumber(to);
  const clock = new ZoneClock(zone, first, last);
  return workingDays(calendar, clock, first, last, clock.instant(dayNumber(originDay) * MINUTES_PER_DAY));
}
const windows = (list: readonly WorkingDay[]): number[][] =>
  list.flatMap((day) => day.windows.map((w) => [w.start, w.end, w.shiftEnd]));

describe('workingDays', () => {
  it('cuts breaks out of a day shift', () => {
    const list = days(
      spec(['06:00-14:30'], { breaks: ['09:30-09:45', '12:00-12:30'] }),
      'Europe/Oslo',
      '2027-03-01',
      '2027-03-02',
    );
    expect(windows(list)).toEqual([
      [360, 570, 870],
      [585, 720, 870],
      [750, 870, 870],
    ]);
    expect(list[0].minutes).toBe(465);
  });

  it('leaves out weekends and holidays, both ends of a span included', () => {
    const list = days(
      spec(['06:00-14:00'], { holidays: [{ from: '2027-03-03', to: '2027-03-04' }] }),
      'Europe/Oslo',
      '2027-03-01',
      '2027-03-10',
    );
    expect(list.map((day) => isoDate(day.day))).toEqual([
      '2027-03-01',
      '2027-03-02',
      '2027-03-05',
      '2027-03-08',
      '2027-03-09',
    ]);
  });

  it('lets a night shift run over midnight, with a break after it', () => {
    const list = days(
      spec(['22:00-06:00'], { breaks: ['02:00-02:30'], on: [1] }),
      'UTC',
      '2027-03-01',
      '2027-03-05',
    );
    expect(windows(list)).toEqual([
      [1320, 1560, 1800],
      [1590, 1800, 1800],
    ]);
  });

  it('keeps what is left of a night shift that began before the programme', () => {
    const list = days(spec(['22:00-06:00'], { on: [7] }), 'UTC', '2027-02-27', '2027-03-03', '2027-03-01');
    expect(windows(list)).toEqual([[0, 360, 360]]);
  });

  // European summer time begins and ends at 01:00 UTC on the last Sunday of March and of October (Directive
  // 2000/84/EC, followed by Norway): 2027-03-28 and 2027-10-31. In the United States at 02:00 local on the
  // second Sunday of March and the first of November (Energy Policy Act of 2005, section 110): 2027-03-14 and
  // 2027-11-07.
  it.each([
    ['Europe/Oslo', '2027-03-27', 7 * 60],
    ['Europe/Oslo', '2027-10-30', 9 * 60],
    ['America/Chicago', '2027-03-13', 7 * 60],
    ['America/Chicago', '2027-11-06', 9 * 60],
  ])('makes the Saturday night shift of %s on %s last %i minutes', (zone, date, minutes) => {
    const after = isoDate(dayNumber(date) + 1);
    const list = days(spec(['22:00-06:00'], { on: [6] }), zone, date, after);
    expect(list.map((day) => day.minutes)).toEqual([minutes]);
  });

  it('keeps the clock time of a day shift over the change of March and moves it back in October', () => {
    const shift = spec(['06:00-14:00'], { on: [1, 2, 3, 4, 5, 6, 7] });
    const spring = days(shift, 'Europe/Oslo', '2027-03-27', '2027-03-30');
    expect(spring.map((day) => day.windows[0].start)).toEqual([360, 360 + 1440 - 60, 360 + 2880 - 60]);
    const autumn = days(shift, 'Europe/Oslo', '2027-10-30', '2027-11-02');
    expect(autumn.map((day) => day.windows[0].start)).toEqual([360, 360 + 1440 + 60, 360 + 2880 + 60]);
    expect([...spring, ...autumn].map((day) => day.minutes)).toEqual([480, 480, 480, 480, 480, 480]);
  });

  it('moves a start that the clock skips on by the hour that is missing', () => {
    // 02:30 of 2027-03-28 does not exist in Oslo; 03:30 summer time is 150 minutes after midnight.
    const list = days(spec(['02:30-08:00'], { on: [7] }), 'Europe/Oslo', '2027-03-28', '2027-03-29');
    expect(windows(list)).toEqual([[150, 420, 420]]);
  });

  it('gives a zone without a calendar days of 23, 24 and 25 hours', () => {
    expect(days(undefined, 'Europe/Oslo', '2027-03-27', '2027-03-30').map((day) => day.minutes)).toEqual([
      1440, 1380, 1440,
    ]);
    expect(days(undefined, 'America/Chicago', '2027-11-06', '2027-11-09').map((day) => day.minutes)).toEqual([
      1440, 1500, 1440,
    ]);
  });

  it('lets the later of two shifts that overlap begin when the earlier ends', () => {
    const list = days(spec(['06:00-14:30', '14:00-22:00'], { on: [1] }), 'UTC', '2027-03-01', '2027-03-02');
    expect(windows(list)).toEqual([
      [360, 870, 870],
      [870, 1320, 1320],
    ]);
  });
});

describe('calendar columns', () => {
  const columnsOf = (list: readonly WorkingDay[], horizon: number) => {
    const roster = list.flatMap(({ day, windows }) =>
      windows.map((window) => ({ ...window, day, instance: 0, isOvertime: false, entry: -1 })),
    );
    return calendarColumns(roster, horizon, () => 0);
  };
  const columns = (hours: readonly string[], zone: string, breaks: readonly string[] = []) =>
    columnsOf(days(spec(hours, { breaks }), zone, '2027-03-01', '2027-03-06'), 5 * 1440);

  it('count the working time before each window and stop at the horizon', () => {
    const cut = columnsOf(days(spec(['06:00-14:00']), 'UTC', '2027-03-01', '2027-03-06'), 1440 + 400);
    expect([...cut.start]).toEqual([360, 1800]);
    expect([...cut.end]).toEqual([840, 1840]);
    expect([...cut.before]).toEqual([0, 480]);
    expect([...cut.shiftEnd]).toEqual([840, 2280]);
  });

  it('have in common what lies in both, up to the end of the shorter shift', () => {
    const both = intersection(
      columns(['06:00-14:00'], 'UTC', ['10:00-10:30']),
      columns(['08:00-16:00'], 'UTC', ['12:00-13:00']),
    );
    expect([...both.start].slice(0, 4)).toEqual([480, 630, 780, 1920]);
    expect([...both.end].slice(0, 4)).toEqual([600, 720, 840, 2040]);
    expect([...both.shiftEnd].slice(0, 4)).toEqual([840, 840, 840, 2280]);
    expect([...both.before].slice(0, 4)).toEqual([0, 120, 210, 270]);
  });

  it('have nothing in common where shifts do not meet', () => {
    expect(intersection(columns(['06:00-14:00'], 'UTC'), columns(['14:00-22:00'], 'UTC')).start).toHaveLength(
      0,
    );
  });
});
