import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { at } from '../lookup/columns.js';
import type { CalendarSpec, ClockSpan } from '../types/calendars.js';
import { dayNumber, weekday } from './date.js';
import type { ZoneClock } from './zone.js';

/**
 * Working time of one shift between breaks, minutes since the programme's start. `shiftEnd` is the clock end
 * of its shift, `shift` its place among the `hours` of the calendar.
 */
export interface Window {
  readonly start: number;
  readonly end: number;
  readonly shiftEnd: number;
  readonly shift: number;
}
/** A date with working time; a night shift belongs to the date on which it begins. */
export interface WorkingDay {
  readonly day: number;
  readonly windows: readonly Window[];
  readonly minutes: number;
}

/** When the first working minute of a day begins, and when the last one ends. */
export const startOf = (day: WorkingDay): number => at(day.windows, 0).start;
export const endOf = (day: WorkingDay): number => at(day.windows, day.windows.length - 1).end;

/**
 * Times of `count` units that are released on one day, spread over its working time from its first minute on.
 */
export function timesOnDay(day: WorkingDay, count: number): number[] {
  return Array.from({ length: count }, (_, i) => timeInDay(day, (i / count) * day.minutes));
}

/** When `minutes` of the day's working time have passed; at the end of a window the start of the next. */
export function timeInDay(day: WorkingDay, minutes: number): number {
  let rest = minutes;
  for (const { start, end } of day.windows) {
    if (rest < end - start) return start + rest;
    rest -= end - start;
  }
  return endOf(day);
}

/** Says of a day number whether it is a working day; every day is one where there is no calendar. */
export function workingDayRule(spec: CalendarSpec | undefined): (day: number) => boolean {
  if (spec === undefined) return () => true;
  const on = new Set(spec.on);
  const isOff = dayOffRule(spec);
  return (day) => on.has(weekday(day)) && !isOff(day);
}

/** Says of a day number whether it is a holiday or in a shutdown. */
export function dayOffRule(spec: CalendarSpec): (day: number) => boolean {
  const off = [...spec.holidays, ...spec.shutdowns].map(
    (span) => [dayNumber(span.from), dayNumber(span.to)] as const,
  );
  return (day) => off.some(([from, to]) => from <= day && day <= to);
}

/**
 * The working days of a calendar in a zone, from day number `fromDay` up to but without `toDay`, in order.
 * Windows are sorted and disjoint over all days: where shifts overlap, the later one begins at the end of the
 * earlier. Without a calendar each date is one window from midnight to midnight. `origin` is the programme's
 * start as an instant of the clock; working time before it is left out.
 */
export function workingDays(
  spec: CalendarSpec | undefined,
  clock: ZoneClock,
  fromDay: number,
  toDay: number,
  origin: number,
): WorkingDay[] {
  const works = workingDayRule(spec);
  const pieces = shiftPieces(spec ?? ROUND_THE_CLOCK);
  const instant = (day: number, minute: number): number =>
    clock.instant(day * MINUTES_PER_DAY + minute) - origin;
  const days: WorkingDay[] = [];
  let free = 0;
  for (let day = fromDay; day < toDay; day++) {
    if (!works(day)) continue;
    const windows: Window[] = [];
    let minutes = 0;
    for (const piece of pieces) {
      const start = Math.max(instant(day, piece.start), free);
      const end = instant(day, piece.end);
      if (end <= start) continue;
      windows.push({ start, end, shiftEnd: instant(day, piece.shiftEnd), shift: piece.shift });
      minutes += end - start;
      free = end;
    }
    if (minutes > 0) days.push({ day, windows, minutes });
  }
  return days;
}

/** Working minutes of a whole day, whenever a programme starts on it. */
export const minutesADay = (spec: CalendarSpec | undefined): number =>
  shiftPieces(spec ?? ROUND_THE_CLOCK).reduce((sum, { start, end }) => sum + end - start, 0);

const ROUND_THE_CLOCK: Pick<CalendarSpec, 'hours' | 'breaks'> = {
  hours: [{ startMin: 0, endMin: MINUTES_PER_DAY }],
  breaks: [],
};

/**
 * Shifts of a day with the breaks cut out, sorted, in minutes after the day's midnight (beyond 1440: the next
 * day).
 */
export function shiftPieces(spec: Pick<CalendarSpec, 'hours' | 'breaks'>): Window[] {
  const breaks = spec.breaks.map(unrolled);
  const pieces: Window[] = [];
  for (const [position, shift] of spec.hours.map(unrolled).entries()) {
    let rest = [shift];
    for (const pause of breaks) {
      // A break is a clock time: it may lie after the midnight of a night shift, or begin before that of an
      // early one.
      for (const turn of [-MINUTES_PER_DAY, 0, MINUTES_PER_DAY])
        rest = rest.flatMap((span) => without(span, pause.start + turn, pause.end + turn));
    }
    for (const span of rest) pieces.push({ ...span, shiftEnd: shift.end, shift: position });
  }
  return pieces.sort((a, b) => a.start - b.start);
}

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** In minutes after midnight; an end at or before the start is on the next day. */
export function unrolled({ startMin, endMin }: ClockSpan): Span {
  return { start: startMin, end: endMin > startMin ? endMin : endMin + MINUTES_PER_DAY };
}

function without(span: Span, start: number, end: number): Span[] {
  if (end <= span.start || start >= span.end) return [span];
  return [
    { start: span.start, end: start },
    { start: end, end: span.end },
  ].filter((part) => part.end > part.start);
}

/** Minutes of a week. */
export const WEEK = 7 * MINUTES_PER_DAY;

/** Minutes from start to end. */
export function lengthOf(clock: ClockSpan): number {
  const { start, end } = unrolled(clock);
  return end - start;
}

/** Minutes from the start of the shift to the break, if the break lies inside. */
export function offsetIn(shift: ClockSpan, pause: ClockSpan): number | undefined {
  const offset = (pause.startMin - shift.startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY;
  return offset + lengthOf(pause) <= lengthOf(shift) ? offset : undefined;
}

type Hours = Pick<CalendarSpec, 'on' | 'hours' | 'breaks'>;

/** The shifts of a week, each by the minute of the week at which it starts. */
export const weekShifts = ({
  on,
  hours,
}: Pick<Hours, 'on' | 'hours'>): { shift: ClockSpan; start: number }[] =>
  on.flatMap((day) => hours.map((shift) => ({ shift, start: (day - 1) * MINUTES_PER_DAY + shift.startMin })));

/** Each minute of a week without holidays: 1 working, 0 not. */
export function weekOf({ on, hours, breaks }: Hours): Uint8Array {
  const week = new Uint8Array(WEEK);
  const fill = (value: number, start: number, length: number): void => {
    for (let i = 0; i < length; i++) week[(start + i) % WEEK] = value;
  };
  for (const { shift, start } of weekShifts({ on, hours })) {
    fill(1, start, lengthOf(shift));
    for (const pause of breaks) {
      const offset = offsetIn(shift, pause);
      if (offset !== undefined) fill(0, start + offset, lengthOf(pause));
    }
  }
  return week;
}
