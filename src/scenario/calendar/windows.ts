import type { CalendarColumns } from '../../flow/model/model.js';
import type { RosterWindow } from './roster.js';
import type { WorkingDay } from './days.js';

/**
 * Columns of the working days' windows up to `horizon` (minutes since the programme's start). A shift's end
 * may lie beyond it.
 */
export function calendarColumns(
  days: readonly Pick<WorkingDay, 'windows'>[],
  horizon: number,
): CalendarColumns {
  const windows = days.flatMap((day) => day.windows).filter((window) => window.start < horizon);
  return columns(
    windows.map((window) => window.start),
    windows.map((window) => Math.min(window.end, horizon)),
    windows.map((window) => window.shiftEnd),
  );
}

/** The same of windows with overtime. `bitOf` gives the bit of the rule of an entry of `overtime`. */
export function rosterColumns(
  roster: readonly RosterWindow[],
  horizon: number,
  bitOf: (entry: number) => number,
): CalendarColumns {
  const shown = roster.filter((window) => window.start < horizon);
  return {
    ...calendarColumns([{ windows: shown }], horizon),
    overtime: Uint8Array.from(shown, (window) => Number(window.isOvertime)),
    rules: Int32Array.from(shown, ({ entry }) => (entry < 0 ? 0 : bitOf(entry))),
  };
}

/**
 * Time that is in both calendars. A shift of it ends where the first of the two shifts ends; it is worked if
 * the rules of both ask for it.
 */
export function intersection(a: CalendarColumns, b: CalendarColumns): CalendarColumns {
  const start: number[] = [],
    end: number[] = [],
    shiftEnd: number[] = [],
    overtime: number[] = [],
    rules: number[] = [];
  for (let i = 0, j = 0; i < a.start.length && j < b.start.length; ) {
    const from = Math.max(a.start[i], b.start[j]);
    const to = Math.min(a.end[i], b.end[j]);
    if (to > from) {
      start.push(from);
      end.push(to);
      shiftEnd.push(Math.min(a.shiftEnd[i], b.shiftEnd[j]));
      overtime.push(a.overtime[i] | b.overtime[j]);
      rules.push(a.rules[i] | b.rules[j]);
    }
    if (a.end[i] < b.end[j]) i++;
    else j++;
  }
  return {
    ...columns(start, end, shiftEnd),
    overtime: Uint8Array.from(overtime),
    rules: Int32Array.from(rules),
  };
}

export function sameColumns(a: CalendarColumns, b: CalendarColumns): boolean {
  return (
    sameNumbers(a.start, b.start) &&
    sameNumbers(a.end, b.end) &&
    sameNumbers(a.shiftEnd, b.shiftEnd) &&
    sameNumbers(a.overtime, b.overtime) &&
    sameNumbers(a.rules, b.rules)
  );
}

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Usual hours; overtime is written over them. */
function columns(
  start: readonly number[],
  end: readonly number[],
  shiftEnd: readonly number[],
): CalendarColumns {
  const before = new Float64Array(start.length);
  for (let i = 1; i < start.length; i++) before[i] = before[i - 1] + (end[i - 1] - start[i - 1]);
  return {
    start: Float64Array.from(start),
    end: Float64Array.from(end),
    before,
    shiftEnd: Float64Array.from(shiftEnd),
    overtime: new Uint8Array(start.length),
    rules: new Int32Array(start.length),
  };
}
