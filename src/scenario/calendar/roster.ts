import { type CalendarColumns, MINUTES_PER_DAY } from '../../flow/model/time.js';
import { at, float64, int32, uint8 } from '../lookup/columns.js';
import type { CalendarSpec } from '../types/calendars.js';
import { dayNumber, weekday } from './date.js';
import { dayOffRule, type Span, shiftPieces, unrolled, type Window, type WorkingDay } from './days.js';
import type { ZoneClock } from './zone.js';

/** A window of a calendar with its overtime: the day and the shift it belongs to, and what it is. */
export interface RosterWindow extends Window {
  readonly day: number;
  /** Running number of the shift; windows of one shift have the same. */
  readonly instance: number;
  readonly isOvertime: boolean;
  /** Entry of `overtime` whose rule decides whether it is worked; -1: always worked. */
  readonly entry: number;
}

/** A shift in minutes after the midnight of its date; overtime that touches it lengthens it. */
interface DayShift {
  readonly day: number;
  start: number;
  end: number;
  readonly position: number;
  readonly windows: Omit<RosterWindow, 'instance' | 'shiftEnd' | 'day'>[];
}

/**
 * Windows of the usual days and of overtime in order, disjoint. Overtime that begins where a shift ends, or
 * ends where one begins, is part of that shift; other overtime is a shift of its own, the first of a date
 * counting as the first of the calendar and so on.
 * @param days usual working days of the same calendar and clock; `fromDay` up to but without `toDay` are
 * looked at
 */
export function rosterWindows(
  spec: CalendarSpec | undefined,
  days: readonly WorkingDay[],
  clock: ZoneClock,
  fromDay: number,
  toDay: number,
  origin: number,
): RosterWindow[] {
  const usual = new Map(days.map((day) => [day.day, day.windows]));
  const instant = (day: number, minute: number): number =>
    clock.instant(day * MINUTES_PER_DAY + minute) - origin;
  const extra = spec === undefined ? () => [] : extraHours(spec),
    hours = spec === undefined ? [{ start: 0, end: MINUTES_PER_DAY }] : spec.hours.map(unrolled);
  const all: DayShift[] = [];
  let eve: DayShift[] = [];
  for (let day = fromDay; day < toDay; day++) {
    const today: DayShift[] = [];
    for (const window of usual.get(day) ?? []) {
      let shift = today.find(({ position }) => position === window.shift);
      if (shift === undefined)
        today.push((shift = { day, ...at(hours, window.shift), position: window.shift, windows: [] }));
      shift.windows.push({ ...window, isOvertime: false, entry: -1 });
    }
    let own = 0;
    for (const { start, end, entry, pieces } of extra(day)) {
      // A night shift of the eve may end where it begins.
      let host =
        today.find((shift) => shift.end === start || shift.start === end) ??
        eve.find((shift) => shift.end === start + MINUTES_PER_DAY);
      const turn = host === undefined || host.day === day ? 0 : MINUTES_PER_DAY;
      if (host === undefined)
        today.push((host = { day, start, end, position: Math.min(own++, hours.length - 1), windows: [] }));
      else if (host.end === start + turn) host.end = end + turn;
      else host.start = start;
      for (const piece of pieces)
        host.windows.push({
          start: Math.max(0, instant(day, piece.start)),
          end: instant(day, piece.end),
          shift: host.position,
          isOvertime: true,
          entry,
        });
    }
    all.push(...today);
    eve = today;
  }
  const windows = all.flatMap((shift) =>
    shift.windows.map((window) => ({ ...window, day: shift.day, shiftEnd: instant(shift.day, shift.end) })),
  );
  return numbered(windows.filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start));
}

/** Extra hours of a day number, in order, with the breaks cut out of them. */
function extraHours(
  spec: CalendarSpec,
): (day: number) => { start: number; end: number; entry: number; pieces: readonly Span[] }[] {
  const isOff = dayOffRule(spec);
  const entries = spec.overtime
    .flatMap(({ hours, on = spec.on, from, to, when }, e) =>
      hours.map((span) => ({
        ...unrolled(span),
        entry: when === undefined ? -1 : e,
        on: new Set(on),
        pieces: shiftPieces({ hours: [span], breaks: spec.breaks }),
        first: from === undefined ? -Infinity : dayNumber(from),
        last: to === undefined ? Infinity : dayNumber(to),
      })),
    )
    .sort((a, b) => a.start - b.start);
  return (day) =>
    isOff(day)
      ? []
      : entries.filter(({ on, first, last }) => on.has(weekday(day)) && first <= day && day <= last);
}

/** Numbers the shifts, and makes the windows disjoint. */
function numbered(windows: readonly Omit<RosterWindow, 'instance'>[]): RosterWindow[] {
  const out: RosterWindow[] = [];
  let free = 0,
    instance = -1,
    last: Omit<RosterWindow, 'instance'> | undefined;
  for (const window of windows) {
    const start = Math.max(window.start, free);
    if (window.end <= start) continue;
    if (
      last === undefined ||
      last.day !== window.day ||
      last.shiftEnd !== window.shiftEnd ||
      last.shift !== window.shift
    )
      instance++;
    out.push({ ...window, start, instance });
    last = window;
    free = window.end;
  }
  return out;
}

export interface WindowRow extends Pick<RosterWindow, 'start' | 'end' | 'shiftEnd'> {
  readonly overtime: number | boolean;
  readonly rules: number;
}

/**
 * Columns of the windows of a calendar up to `horizon` (minutes since the programme's start). A shift's end
 * may lie beyond it. `bitOf` gives the bit of the rule of an entry of `overtime`.
 */
export function calendarColumns(
  roster: readonly (Window & Partial<Pick<RosterWindow, 'isOvertime' | 'entry'>>)[],
  horizon: number,
  bitOf: (entry: number) => number,
): CalendarColumns {
  return windowColumns(
    roster
      .filter(({ start }) => start < horizon)
      .map(({ start, end, shiftEnd, isOvertime = false, entry = -1 }) => ({
        start,
        end: Math.min(end, horizon),
        shiftEnd,
        overtime: isOvertime,
        rules: entry < 0 ? 0 : bitOf(entry),
      })),
  );
}

/**
 * Time that is in both calendars. A shift of it ends where the first of the two shifts ends; it is worked if
 * the rules of both ask for it.
 */
export function intersection(a: CalendarColumns, b: CalendarColumns): CalendarColumns {
  const shared: WindowRow[] = [];
  for (let i = 0, j = 0; i < a.start.length && j < b.start.length; ) {
    const start = Math.max(at(a.start, i), at(b.start, j)),
      end = Math.min(at(a.end, i), at(b.end, j));
    if (end > start)
      shared.push({
        start,
        end,
        shiftEnd: Math.min(at(a.shiftEnd, i), at(b.shiftEnd, j)),
        overtime: at(a.overtime, i) | at(b.overtime, j),
        rules: at(a.rules, i) | at(b.rules, j),
      });
    if (at(a.end, i) < at(b.end, j)) i++;
    else j++;
  }
  return windowColumns(shared);
}

export const sameColumns = (a: CalendarColumns, b: CalendarColumns): boolean =>
  a.start.length === b.start.length &&
  (['start', 'end', 'shiftEnd', 'overtime', 'rules'] as const).every((key) =>
    a[key].every((value, i) => value === b[key][i]),
  );

/** Windows in order, disjoint, as columns. */
export function windowColumns(rows: readonly WindowRow[]): CalendarColumns {
  let worked = 0;
  const ends = rows.map(({ start, end }) => (worked += end - start));
  return {
    ...float64(rows, 'start', 'end', 'shiftEnd'),
    before: Float64Array.from([0, ...ends].slice(0, rows.length)),
    ...uint8(rows, 'overtime'),
    ...int32(rows, 'rules'),
  };
}
