import { sum, sumOf } from '../statistics/sums.js';
import type { Load } from './load.js';
import type { Weights } from './weights.js';

/** Starting points of the cycles that are tried, and what each cycle is moved by from one to the next. */
const STARTS = 64,
  GOLDEN = 0.6180339887498949;
/** More units than this are moved on several at a time. */
const MOST_UNITS = 2000;
/** A queue that grows because more is asked than arithmetic allows is no matter of loads. */
const FULL = 0.999;
const ROUNDING = 1e-9;

/** A usual week: so many working days one after the other, and the share of 24 h that each of them takes. */
export interface WorkWeek {
  readonly days: number;
  readonly share: number;
}

/** What a count covers. */
export interface Covered {
  /** Working days, in parts of which each shipment has the mean weight. */
  readonly days: number;
  readonly cells: number;
  /** Units released a working day, and the most that arithmetic allows; Infinity: nothing limits. */
  readonly perDay: number;
  readonly ceiling: number;
  readonly week: WorkWeek;
}

/**
 * Units by which loads alone can upset a count, by arithmetic: units are released evenly, each waits at every
 * load of the route for the next one, which is then under way day and night and at weekends; behind the last
 * of them one after the other is worked on in the working days, at the most that the build can do. All that
 * is released is shipped, so what the count makes of it beyond or below is its error. The greatest of several
 * starting points of the cycles against the time counted, spread evenly (Weyl 1916: multiples of an
 * irrational number).
 */
export function upset(loads: readonly Load[], weights: Weights, covered: Covered): number {
  if (loads.length === 0) return 0;
  const { days, cells, perDay, ceiling, week } = covered,
    cell = days / cells,
    worth = Float64Array.from({ length: cells }, (_, i) => weights(i * cell, (i + 1) * cell)),
    all = sum(worth) * cell,
    lead = 1 + days + sumOf(loads, (load) => load.cycleDays + load.underWayDays),
    apart = Math.max(1, Math.floor((perDay * (days + lead)) / MOST_UNITS)) / perDay,
    work = apart * Math.min(FULL, perDay / ceiling);
  let most = 0;
  for (let start = 0; start < STARTS; start++) {
    const part = (i: number): number => ((start + 1) * GOLDEN * (i + 1) + start / STARTS) % 1,
      gone = departures(
        loads,
        loads.map((_, i) => part(i + 1)),
        week,
      );
    let counted = 0,
      free = -Infinity;
    for (let release = (part(0) - 1) * apart - lead; release < days; release += apart) {
      free = Math.max(free, gone(release)) + work;
      if (free >= 0 && free < days) counted += worth[Math.min(cells - 1, Math.floor(free / cell))];
    }
    most = Math.max(most, Math.abs(1 - (counted * apart) / all) * perDay * days);
  }
  return most;
}

/**
 * When a unit has gone on from the last load, by when it was released; working days.
 * @param begun part of its cycle that each load is in at 0
 */
function departures(
  loads: readonly Load[],
  begun: readonly number[],
  week: WorkWeek,
): (release: number) => number {
  /** Days by the clock, from the loads up to one. */
  const from = (last: number, release: number): number => {
    if (last < 0) return clockAt(release, week);
    const { cycleDays, isTimed, underWayDays } = loads[last],
      end = (time: number): number =>
        Math.ceil(time / cycleDays + begun[last] - ROUNDING) * cycleDays - begun[last] * cycleDays;
    // All units of a load go on when the last of them has come.
    const at = isTimed
      ? clockAt(end(workedAt(from(last - 1, release), week)), week)
      : from(last - 1, end(release));
    return at + underWayDays;
  };
  return (release) => workedAt(from(loads.length - 1, release), week);
}

/** Days of 24 h from a Monday's first working minute until so many working days are worked. */
function clockAt(worked: number, { days, share }: WorkWeek): number {
  const weeks = Math.floor(worked / days + ROUNDING),
    rest = Math.max(0, worked - weeks * days),
    whole = Math.min(days - 1, Math.floor(rest + ROUNDING));
  return 7 * weeks + whole + (rest - whole) * share;
}

/** The other way round. */
function workedAt(clock: number, { days, share }: WorkWeek): number {
  const weeks = Math.floor(clock / 7),
    rest = clock - 7 * weeks,
    whole = Math.floor(rest);
  return weeks * days + (whole >= days ? days : whole + Math.min(1, (rest - whole) / share));
}
