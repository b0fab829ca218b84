import { sum } from '../statistics/sums.js';
import type { Load } from './load.js';
import type { Weights } from './weights.js';

/** Starting points of the cycles that are tried, and what each cycle is moved by from one to the next. */
const STARTS = 64,
  GOLDEN = 0.6180339887498949;
/** More units than this are moved on several at a time. */
const MOST_UNITS = 2000;
const ROUNDING = 1e-9;

/** A usual week: so many working days one after the other, and the share of 24 h that each of them takes. */
export interface WorkWeek {
  readonly days: number;
  readonly share: number;
}

/** What a count covers: working days in parts of which each shipment has the mean weight, and units a day. */
export interface Covered {
  readonly days: number;
  readonly cells: number;
  readonly perDay: number;
}

/**
 * Units by which loads alone can upset a count, by arithmetic: units are released evenly, each waits at every
 * load of the route for the next one, which is then under way day and night and at weekends, and nothing else
 * takes time. Shipped is what is asked, so what the count makes of it beyond or below that is its error. The
 * greatest of several starting points of the cycles against the time counted, spread evenly (Weyl 1916:
 * multiples of an irrational number).
 */
export function upset(
  loads: readonly Load[],
  weights: Weights,
  { days, cells, perDay }: Covered,
  week: WorkWeek,
): number {
  if (loads.length === 0) return 0;
  const cell = days / cells,
    worth = Float64Array.from({ length: cells }, (_, i) => weights(i * cell, (i + 1) * cell)),
    all = sum(worth) * cell,
    lead = loads.reduce((total, load) => total + load.cycleDays + load.underWayDays, 1),
    apart = Math.max(1, Math.floor((perDay * (days + lead)) / MOST_UNITS)) / perDay;
  let most = 0;
  for (let start = 0; start < STARTS; start++) {
    const part = (i: number): number => ((start + 1) * GOLDEN * (i + 1) + start / STARTS) % 1,
      ends = loads.map(({ cycleDays }, i) => endsOf(cycleDays, part(i + 1) * cycleDays));
    /** When the unit released at some time has gone on from the first loads, the last of them given. */
    const gone = (last: number, release: number): number => {
      if (last < 0) return release;
      const { isTimed, underWayDays } = loads[last],
        end = ends[last],
        // All units of a load go on when the last of them has come.
        at = isTimed ? end(gone(last - 1, release)) : gone(last - 1, end(release));
      return underWayDays > 0 ? workedAt(clockAt(at, week) + underWayDays, week) : at;
    };
    let counted = 0;
    for (let release = (part(0) - 1) * apart - lead; release < days; release += apart) {
      const out = gone(loads.length - 1, release);
      if (out >= 0 && out < days) counted += worth[Math.min(cells - 1, Math.floor(out / cell))];
    }
    most = Math.max(most, Math.abs(1 - (counted * apart) / all) * perDay * days);
  }
  return most;
}

/** The end of the cycle that a time lies in, of cycles one of which begins `begun` before 0. */
const endsOf =
  (cycle: number, begun: number) =>
  (time: number): number =>
    Math.ceil((time + begun) / cycle - ROUNDING) * cycle - begun;

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
