import { isoDate } from '../../scenario/calendar/date.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { assumptionsOf } from '../simulate/assumptions.js';
import type { AssumptionResult } from '../simulate/results.js';
import type { UnitAhead } from './builds-ahead.js';

/** Units shipped from the moment to the end of a day: a tenth, half, nine tenths of builds have no more. */
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

/** @param dayOf day number of an instant, Infinity for Infinity; @param first that of the moment */
export const besides = (
  scenario: Scenario,
  units: readonly Pick<UnitAhead, 'dueAt' | 'shippedAt'>[],
  dayOf: (instant: number) => number,
  first: number,
): ForecastBesides => ({
  byDay: shippedByDay(
    units.map(({ shippedAt }) => shippedAt.map(dayOf)),
    // The end of the due day is the start of the next.
    units.map(({ dueAt }) => dayOf(dueAt - 1)),
    first,
  ),
  lateOrders: lateOrders(units),
  assumptions: assumptionsOf(scenario),
});

/**
 * @param shipped by unit, then by build: day number, Infinity where it is never out
 * @param due by unit, day number of the last day in time; Infinity where it has none
 * @param first day number of the start
 */
export function shippedByDay(
  shipped: readonly (readonly number[])[],
  due: readonly number[],
  first: number,
): DayAhead[] {
  const builds = shipped[0]?.length ?? 0,
    isDue = due.some(Number.isFinite),
    days = [...shipped.flat(), ...due]
      .filter(Number.isFinite)
      .reduce((most, day) => Math.max(most, day - first + 1), 1);
  // How many are out by the end of each day. What was due before is due at once.
  const addedUp = (outOn: readonly number[]): Int32Array => {
    const sum = new Int32Array(days);
    for (const day of outOn.filter(Number.isFinite)) {
      const at = Math.max(0, day - first);
      sum[at] = (sum[at] ?? 0) + 1;
    }
    for (let day = 1; day < days; day++) sum[day] = (sum[day] ?? 0) + (sum[day - 1] ?? 0);
    return sum;
  };
  const lines = Array.from({ length: builds }, (_, build) =>
      addedUp(shipped.map((unit) => unit[build] ?? Infinity)),
    ),
    dueBy = addedUp(due);
  return Array.from({ length: days }, (_, day) => {
    const sorted = Int32Array.from(lines, (line) => line[day] ?? 0).sort();
    return {
      date: isoDate(first + day),
      p10: quantile(sorted, 0.1),
      p50: quantile(sorted, 0.5),
      p90: quantile(sorted, 0.9),
      due: isDue ? (dueBy[day] ?? 0) : null,
    };
  });
}

/** How many units are out after they are due, counted build by build; null where none is due. */
export function lateOrders(
  units: readonly Pick<UnitAhead, 'dueAt' | 'shippedAt'>[],
): ForecastBesides['lateOrders'] {
  if (!units.some(({ dueAt }) => dueAt < Infinity)) return null;
  const late = Int32Array.from(
    units[0]?.shippedAt ?? [],
    (_, build) => units.filter(({ dueAt, shippedAt }) => (shippedAt[build] ?? 0) > dueAt).length,
  ).sort();
  return { half: quantile(late, 0.5), fourInFive: quantile(late, 0.8) };
}

/** The least value that this share of builds does not exceed. */
const quantile = (sorted: Int32Array, share: number): number =>
  sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
