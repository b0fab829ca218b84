import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { knownQuantile } from '../sample/known-quantile.js';
import type { Planned } from '../sample/planned.js';
import { Counts } from '../statistics/counts.js';
import type { Estimate } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { sumOf } from '../statistics/sums.js';
import type { Window } from './judged-window.js';
import { type BehindByDay, behindByDay, dayOf, lastDayOf, type Pair, type Shipments } from './pairs.js';

/** What outages do to a build: units shipped without them less units shipped with them, paired. */
export interface Recovery {
  readonly replications: number;
  /** Replications in which any unit is shipped on another day. */
  readonly changed: number;
  /**
   * On the day at whose end the build is furthest behind on average: units behind; below 0 it is ahead. The
   * mean of each replication's own worst day would be above 0 also where nothing is lost.
   */
  readonly behindMost: UnitsBehind;
  /**
   * At the end of the weeks in which the rate is judged, and what is lost in them, units per working day;
   * null without such weeks or if they end before it begins.
   */
  readonly behindJudged: (UnitsBehind & { readonly perDay: Estimate }) | null;
  /** At the end of the run. */
  readonly behindAtEnd: Estimate;
  /** By how much the last unit comes later, days of 24 h; null without a quantity. */
  readonly daysLater: Estimate | null;
  /** Replications that caught up before the run ended. */
  readonly caughtUp: Proportion;
  /** P50 and P80. */
  readonly caughtUpBy: readonly CaughtUp[];
}
export interface UnitsBehind {
  /** Local date of the day at whose end they are counted. */
  readonly date: string;
  readonly units: Estimate;
}

/**
 * When a build has caught up, over replications, with its order-statistic interval: days after the day on
 * which the outage ended, and dates. Null where it is not known; `why` then says so.
 */
export interface CaughtUp {
  readonly p: number;
  readonly days: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly date: string | null;
  readonly lowDate: string | null;
  readonly highDate: string | null;
  readonly why: string | null;
}

/** A week: shipments of single days say little where trucks go full and nobody works on Sundays. */
const DAYS_LEVEL = 7;
/**
 * How a build recovers from outages that begin at `from` and are over at `to`, minutes. A replication has
 * caught up on the first day, from its own worst one up to `behindMost` on, at whose end and in the week from
 * which on average no fewer units are shipped than without the outages; at the latest when its last unit is
 * out. One that is never behind has caught up when they are over.
 */
export function recovery(
  { clock, model, scenario }: Planned,
  pairs: readonly Pair[],
  { from, to }: { readonly from: number; readonly to: number },
  window: Window | null,
  level: number,
): Recovery {
  const first = dayOf(from),
    over = lastDayOf(to),
    { bucketEdges: edges } = model.programme;
  const judged = window === null ? 0 : lastDayOf(edges[window.last + 1]);
  const behind = behindByDay(pairs, Math.max(first, over, judged)),
    worst = worstDay(behind, first);
  const units = (day: number): Estimate =>
    meanInterval(
      behind.map((each) => each[day]),
      level,
    );
  const before = (each: Float64Array): number =>
    window === null || window.first === 0 ? 0 : each[lastDayOf(edges[window.first])];
  // Noon, since midnight is an hour off where the clocks have changed.
  const date = (day: number): string => clock.date((day + 0.5) * MINUTES_PER_DAY) ?? '';
  const days = new Counts();
  pairs.forEach((pair, r) => {
    days.add(Math.max(0, caughtUpOn(behind[r], pair.with, first, worst) - over));
  });
  const caughtUpBy = [0.5, 0.8].map((p): CaughtUp => {
    const { middle, why, ...bounds } = knownQuantile(
      days,
      p,
      level,
      (each) => each,
      'no replication was run',
      (late) => `${late} of ${days.n} replications had not caught up when the run ended`,
    );
    const on = (after: number | null): string | null => (after === null ? null : date(over + after));
    return {
      p,
      days: middle,
      ...bounds,
      date: on(middle),
      lowDate: on(bounds.low),
      highDate: on(bounds.high),
      why,
    };
  });
  return {
    replications: pairs.length,
    changed: pairs.filter(
      (pair, r) =>
        behind[r].some((each) => each !== 0) || !Object.is(pair.with.lastUnitDay, pair.without.lastUnitDay),
    ).length,
    behindMost: { date: date(worst), units: units(worst) },
    behindJudged:
      window === null || edges[window.last + 1] <= from
        ? null
        : {
            date: date(judged),
            units: units(judged),
            perDay: meanInterval(
              behind.map((each) => (each[judged] - before(each)) / window.workingDays),
              level,
            ),
          },
    behindAtEnd: units(behind[0].length - 1),
    daysLater:
      scenario.programme.quantity === undefined
        ? null
        : meanInterval(
            pairs.map((pair) => pair.with.lastUnitDay - pair.without.lastUnitDay),
            level,
          ),
    caughtUp: proportion(days.n - days.of(Infinity), days.n, level),
    caughtUpBy,
  };
}

/** The first day from `first` on on which most units are behind over all replications. */
function worstDay(behind: BehindByDay, first: number): number {
  let worst = first,
    most = -Infinity;
  for (let day = first; day < behind[0].length; day++) {
    const units = sumOf(behind, (each) => each[day]);
    if (units > most) [worst, most] = [day, units];
  }
  return worst;
}

/** The day on which a replication has caught up; 0 if it is never behind, Infinity if it has not. */
function caughtUpOn(
  behind: Float64Array,
  { outcome, endedAt, shippedOn }: Shipments,
  first: number,
  worst: number,
): number {
  let own = first;
  for (let day = first; day <= worst; day++) if (behind[day] > behind[own]) own = day;
  if (behind[own] <= 0) return 0;
  const isFinished = outcome === 'finished',
    last = isFinished ? Math.max(own, shippedOn.length - 1) : lastDayOf(endedAt);
  // Behind the last shipment of either build nothing changes any more; a week has to be known.
  const at = (day: number): number => behind[Math.min(day, behind.length - 1)];
  for (let day = own; day <= (isFinished ? last : last - DAYS_LEVEL + 1); day++) {
    if (at(day) > 0) continue;
    let week = 0;
    for (let next = day; next < day + DAYS_LEVEL; next++) week += at(next);
    if (week <= 0) return day;
  }
  return isFinished ? last : Infinity;
}
