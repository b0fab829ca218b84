import type { CalendarColumns } from '../../flow/model/time.js';
import { at } from '../lookup/columns.js';
import type { WorkingDay } from './days.js';
import type { RosterWindow } from './roster.js';

type Hours = Pick<RosterWindow, 'start' | 'end' | 'shiftEnd'>;

/**
 * Columns of the working days' windows up to `horizon` (minutes since the programme's start). A shift's end
 * may lie beyond it.
 */
export function calendarColumns(
  days: readonly { readonly windows: WorkingDay['windows'] }[],
  horizon: number,
): CalendarColumns {
  const windows = days.flatMap((day) => day.windows).filter((window) => window.start < horizon);
  return columns(
    windows.map(({ start, end, shiftEnd }) => ({ start, end: Math.min(end, horizon), shiftEnd })),
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
  const shared: (Hours & { readonly overtime: number; readonly rules: number })[] = [];
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
  return {
    ...columns(shared),
    overtime: Uint8Array.from(shared, ({ overtime }) => overtime),
    rules: Int32Array.from(shared, ({ rules }) => rules),
  };
}

export const sameColumns = (a: CalendarColumns, b: CalendarColumns): boolean =>
  sameNumbers(a.start, b.start) &&
  sameNumbers(a.end, b.end) &&
  sameNumbers(a.shiftEnd, b.shiftEnd) &&
  sameNumbers(a.overtime, b.overtime) &&
  sameNumbers(a.rules, b.rules);

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Usual hours; overtime is written over them. */
function columns(windows: readonly Hours[]): CalendarColumns {
  let worked = 0;
  const ends = windows.map(({ start, end }) => (worked += end - start));
  return {
    start: Float64Array.from(windows, ({ start }) => start),
    end: Float64Array.from(windows, ({ end }) => end),
    before: Float64Array.from([0, ...ends].slice(0, windows.length)),
    shiftEnd: Float64Array.from(windows, ({ shiftEnd }) => shiftEnd),
    overtime: new Uint8Array(windows.length),
    rules: new Int32Array(windows.length),
  };
}
