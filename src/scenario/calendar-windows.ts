import type { CalendarColumns } from '../flow/model.js';
import type { WorkingDay } from './calendar-days.js';

/** Columns of the working days' windows up to `horizon` (minutes since the programme's start). A shift's end may lie beyond it. */
export function calendarColumns(days: readonly WorkingDay[], horizon: number): CalendarColumns {
  const start: number[] = [], end: number[] = [], shiftEnd: number[] = [];
  for (const day of days) {
    for (const window of day.windows) {
      if (window.start >= horizon) continue;
      start.push(window.start);
      end.push(Math.min(window.end, horizon));
      shiftEnd.push(window.shiftEnd);
    }
  }
  return columns(start, end, shiftEnd);
}

/** Time that is in both calendars. A shift of it ends where the first of the two shifts ends. */
export function intersection(a: CalendarColumns, b: CalendarColumns): CalendarColumns {
  const start: number[] = [], end: number[] = [], shiftEnd: number[] = [];
  for (let i = 0, j = 0; i < a.start.length && j < b.start.length;) {
    const from = Math.max(a.start[i], b.start[j]);
    const to = Math.min(a.end[i], b.end[j]);
    if (to > from) {
      start.push(from);
      end.push(to);
      shiftEnd.push(Math.min(a.shiftEnd[i], b.shiftEnd[j]));
    }
    if (a.end[i] < b.end[j]) i++;
    else j++;
  }
  return columns(start, end, shiftEnd);
}

export function sameColumns(a: CalendarColumns, b: CalendarColumns): boolean {
  return sameNumbers(a.start, b.start) && sameNumbers(a.end, b.end) && sameNumbers(a.shiftEnd, b.shiftEnd);
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function columns(start: readonly number[], end: readonly number[], shiftEnd: readonly number[]): CalendarColumns {
  const before = new Float64Array(start.length);
  for (let i = 1; i < start.length; i++) before[i] = before[i - 1] + (end[i - 1] - start[i - 1]);
  return { start: Float64Array.from(start), end: Float64Array.from(end), before, shiftEnd: Float64Array.from(shiftEnd) };
}
