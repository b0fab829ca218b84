import { isoDate } from '../../../scenario/calendar/date.js';
import type { AssumptionResult } from '../../simulate/results.js';

/** Units shipped from the moment on to the end of a day: a tenth, half, nine tenths of builds have no more. */
export interface DayAhead {
  readonly date: string;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Units due up to that day; null where no unit has a due day. */
  readonly due: number | null;
}

/** What a forecast tells besides its orders. */
export interface ForecastBesides {
  /** From the day of the moment to the last on which a unit is out or due. */
  readonly byDay: readonly DayAhead[];
  /** At most so many orders are late in half of the builds, in four of five; null: none has a due day. */
  readonly lateOrders: { readonly half: number; readonly fourInFive: number } | null;
  /** Values of which the scenario says where they come from. */
  readonly assumptions: readonly AssumptionResult[];
}

/**
 * @param shipped by unit, then by build: day number, Infinity where it is never out
 * @param due by unit, day number of the last day in time; undefined where it has none
 * @param first day number of the start
 */
export function shippedByDay(
  shipped: readonly (readonly number[])[],
  due: readonly (number | undefined)[],
  first: number,
): DayAhead[] {
  const builds = shipped[0]?.length ?? 0,
    isDue = due.some((day) => day !== undefined),
    known = [...shipped.flat(), ...due].filter((day): day is number => Number.isFinite(day)),
    days = known.reduce((last, day) => Math.max(last, day - first), 0) + 1;
  // How many are out by the end of each day. What was due before is due at once.
  const addedUp = (outOn: readonly (number | undefined)[]): Int32Array => {
    const sum = new Int32Array(days);
    for (const day of outOn)
      if (day !== undefined && Number.isFinite(day)) {
        const at = Math.max(0, day - first);
        sum[at] = (sum[at] ?? 0) + 1;
      }
    for (let day = 1; day < days; day++) sum[day] = (sum[day] ?? 0) + (sum[day - 1] ?? 0);
    return sum;
  };
  const lines = Array.from({ length: builds }, (_, build) => addedUp(shipped.map((unit) => unit[build]))),
    dueBy = addedUp(due);
  return Array.from({ length: days }, (_, day) => {
    const sorted = Int32Array.from(lines, (line) => line[day] ?? 0).sort(),
      at = (share: number): number => sorted[Math.max(0, Math.ceil(share * builds) - 1)] ?? 0;
    return {
      date: isoDate(first + day),
      p10: at(0.1),
      p50: at(0.5),
      p90: at(0.9),
      due: isDue ? (dueBy[day] ?? 0) : null,
    };
  });
}

/**
 * How many units are out after they are due, in half of the builds and in four of five at most.
 * @param shipped by unit, then by build: minutes, Infinity where it is never out
 * @param due by unit, minutes; undefined where it has no due day
 */
export function lateOrders(
  shipped: readonly (readonly number[])[],
  due: readonly (number | undefined)[],
): ForecastBesides['lateOrders'] {
  if (!due.some((at) => at !== undefined)) return null;
  const late = Array.from(
    shipped[0] ?? [],
    (_, build) => shipped.filter((unit, u) => (unit[build] ?? 0) > (due[u] ?? Infinity)).length,
  ).sort((a, b) => a - b);
  const at = (share: number): number => late[Math.max(0, Math.ceil(share * late.length) - 1)] ?? 0;
  return { half: at(0.5), fourInFive: at(0.8) };
}
