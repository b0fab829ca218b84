import type { CalendarColumns } from '../../flow/model/time.js';
import { at, float64, int32, uint8 } from '../lookup/columns.js';
import type { RosterWindow } from './roster.js';

interface WindowRow extends Pick<RosterWindow, 'start' | 'end' | 'shiftEnd'> {
  readonly overtime: number | boolean;
  readonly rules: number;
}

/**
 * Columns of the windows of a calendar up to `horizon` (minutes since the programme's start). A shift's end
 * may lie beyond it. `bitOf` gives the bit of the rule of an entry of `overtime`.
 */
export function calendarColumns(
  roster: readonly RosterWindow[],
  horizon: number,
  bitOf: (entry: number) => number,
): CalendarColumns {
  return columns(
    roster
      .filter(({ start }) => start < horizon)
      .map(({ start, end, shiftEnd, isOvertime, entry }) => ({
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
  return columns(shared);
}

export const sameColumns = (a: CalendarColumns, b: CalendarColumns): boolean =>
  a.start.length === b.start.length &&
  (['start', 'end', 'shiftEnd', 'overtime', 'rules'] as const).every((key) =>
    a[key].every((value, i) => value === b[key][i]),
  );

function columns(rows: readonly WindowRow[]): CalendarColumns {
  let worked = 0;
  const ends = rows.map(({ start, end }) => (worked += end - start));
  return {
    ...float64(rows, 'start', 'end', 'shiftEnd'),
    before: Float64Array.from([0, ...ends].slice(0, rows.length)),
    ...uint8(rows, 'overtime'),
    ...int32(rows, 'rules'),
  };
}
