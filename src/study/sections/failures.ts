import { DOWN, OFF_SHIFT, STATE_COUNT } from '../../flow/floor/states.js';
import type { Pending } from '../sample/deferred.js';
import { ratio } from '../sample/sample.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate, Proportion } from '../simulate/results.js';

/** Rule 13 in `results.json`, see `results.ts`. */

/** A station whose equipment fails, or that an outage closed. */
export interface FailureResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  /** Failures in the time observed, over all its places; outages are not failures. */
  readonly failures: Estimate;
  /**
   * From a failure to the end of its repair, by the clock: mean of a replication, and longest of a
   * replication.
   */
  readonly downHours: Estimate;
  readonly longestDownHours: Estimate;
  /** Share of the place time on shift in which the place was not down, be it by a failure or an outage. */
  readonly availability: Estimate;
}

/**
 * A duration over replications with its order-statistic interval; null where it is not known, `why` then says
 * so.
 */
export interface DaysQuantile {
  readonly p: number;
  readonly days: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly why: string | null;
}

export interface OutageResult {
  readonly name: string;
  readonly stations: readonly string[];
  readonly lanes: readonly string[];
  /** Local date and time in the programme's zone; `to` is where it is over. */
  readonly from: string;
  readonly to: string;
  readonly days: number;
  /** Units open (released and not yet out) when it began. */
  readonly openUnits: Estimate;
  /**
   * Replications in which no more were open again before the run ended, of those in which it began; null if
   * it began in none.
   */
  readonly recovered: Proportion | null;
  /** From its end until no more units were open than when it began; P50 and P80, days of 24 h. */
  readonly recoveryDays: readonly DaysQuantile[];
  /** Of the longest outage: open units at the start of each day, over replications; null for the others. */
  readonly byDay: OutageDays | null;
}
export interface OutageDays {
  /** Local date, and days since the outage began. */
  readonly dates: readonly string[];
  readonly days: readonly number[];
  /** Null on a day that no replication came to. */
  readonly mean: readonly (number | null)[];
  readonly p10: readonly (number | null)[];
  readonly p90: readonly (number | null)[];
}

/** Stations that fail, and those that an outage closes, in the order of the scenario. */
export function failures(sample: Sample): Pending<FailureResult[]> {
  const {
    stations,
    siteNames,
    failures: { station: failing },
    outages: { station: closed },
  } = sample.model;
  return Array.from(stations.names, (name, id) => ({ name, id }))
    .filter(({ id }) => failing.includes(id) || closed.includes(id))
    .map(({ name, id }) => ({
      name,
      site: siteNames[stations.site[id]],
      places: stations.places[id],
      failures: sample.amount(({ failures: { count } }) => count[id]),
      downHours: sample.amount(({ failures: { minutes, repairs } }) => ratio(minutes[id] / 60, repairs[id])),
      longestDownHours: sample.amount(({ failures: { longest, repairs } }) =>
        repairs[id] > 0 ? longest[id] / 60 : NaN,
      ),
      availability: sample.share(
        ({ stationShares: shares }) =>
          1 - ratio(shares[id * STATE_COUNT + DOWN], 1 - shares[id * STATE_COUNT + OFF_SHIFT]),
      ),
    }));
}
