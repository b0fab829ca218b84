import { dayNumber, MINUTES_PER_DAY, weekday } from './calendar-date.js';
import { dayOffRule, shiftPieces, unrolled, type Span, type Window, type WorkingDay } from './calendar-days.js';
import type { ZoneClock } from './calendar-zone.js';
import type { CalendarSpec } from './scenario.js';

/** A window of a calendar with its overtime: the day and the shift it belongs to, and what it is. */
export interface RosterWindow extends Window {
  readonly day: number;
  /** Running number of the shift; windows of one shift have the same. */
  readonly instance: number;
  readonly isOvertime: boolean;
  /** Entry of `overtime` whose rule decides whether it is worked; -1: always worked. */
  readonly entry: number;
}

/** A shift of one date, in minutes after its midnight; overtime that touches it lengthens it. */
interface DayShift extends Span { end: number; start: number; readonly position: number; readonly windows: (Omit<RosterWindow, 'instance' | 'shiftEnd'>)[] }

/**
 * Windows of the usual days and of overtime in order, disjoint. Overtime that begins where a shift ends, or ends where one
 * begins, is part of that shift; other overtime is a shift of its own, the first of a date counting as the first of the
 * calendar and so on.
 * @param days usual working days of the same calendar and clock; `fromDay` up to but without `toDay` are looked at
 */
export function rosterWindows(spec: CalendarSpec | undefined, days: readonly WorkingDay[], clock: ZoneClock, fromDay: number, toDay: number, origin: number): RosterWindow[] {
  const usual = new Map(days.map((day) => [day.day, day.windows]));
  const at = (day: number, minute: number): number => clock.instant(day * MINUTES_PER_DAY + minute) - origin;
  const extra = spec === undefined ? () => [] : extraHours(spec);
  const windows: Omit<RosterWindow, 'instance'>[] = [];
  for (let day = fromDay; day < toDay; day++) {
    const shifts = (spec?.hours ?? []).map((span, position): DayShift => ({ ...unrolled(span), position, windows: [] }));
    const regular = usual.get(day) ?? [];
    if (spec === undefined) shifts.push({ start: 0, end: MINUTES_PER_DAY, position: 0, windows: [] });
    for (const window of regular) shifts[window.shift].windows.push({ ...window, day, isOvertime: false, entry: -1 });
    const own: DayShift[] = [];
    for (const { start, end, entry, pieces } of extra(day)) {
      let host = [...(regular.length > 0 ? shifts : []), ...own].find((shift) => shift.end === start || shift.start === end);
      if (host === undefined) own.push(host = { start, end, position: Math.min(own.length, shifts.length - 1), windows: [] });
      else if (host.end === start) host.end = end;
      else host.start = start;
      for (const piece of pieces) host.windows.push({ start: Math.max(0, at(day, piece.start)), end: at(day, piece.end), shift: host.position, day, isOvertime: true, entry });
    }
    for (const shift of [...shifts, ...own]) windows.push(...shift.windows.map((window) => ({ ...window, shiftEnd: at(day, shift.end) })));
  }
  return numbered(windows.filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start));
}

/** Extra hours of a day number, in order, with the breaks cut out of them. */
function extraHours(spec: CalendarSpec): (day: number) => { start: number; end: number; entry: number; pieces: readonly Span[] }[] {
  const isOff = dayOffRule(spec);
  const entries = spec.overtime.flatMap(({ hours, on = spec.on, from, to, when }, e) => hours.map((span) => ({
    ...unrolled(span), entry: when === undefined ? -1 : e, on: new Set(on), pieces: shiftPieces({ hours: [span], breaks: spec.breaks }),
    first: from === undefined ? -Infinity : dayNumber(from), last: to === undefined ? Infinity : dayNumber(to),
  }))).sort((a, b) => a.start - b.start);
  return (day) => (isOff(day) ? [] : entries.filter(({ on, first, last }) => on.has(weekday(day)) && first <= day && day <= last));
}

/** Numbers the shifts, and makes the windows disjoint. */
function numbered(windows: readonly Omit<RosterWindow, 'instance'>[]): RosterWindow[] {
  const out: RosterWindow[] = [];
  let free = 0, instance = -1, last: Omit<RosterWindow, 'instance'> | undefined;
  for (const window of windows) {
    const start = Math.max(window.start, free);
    if (window.end <= start) continue;
    if (last === undefined || last.day !== window.day || last.shiftEnd !== window.shiftEnd || last.shift !== window.shift) instance++;
    out.push({ ...window, start, instance });
    last = window;
    free = window.end;
  }
  return out;
}
