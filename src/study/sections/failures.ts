import { DOWN, OFF_SHIFT, STATE_COUNT } from '../../flow/floor/states.js';
import { named } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

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

/** Stations that fail, and those that an outage closes, in the order of the scenario. */
export function failures(sample: Sample): Pending<FailureResult[]> {
  const {
    stations,
    failures: { station: failing },
    outages: { station: closed },
  } = sample.model;
  return Array.from(stations.names.keys())
    .filter((id) => failing.includes(id) || closed.includes(id))
    .map((id) => ({
      ...named(sample.model, 'stations', id),
      places: stations.places[id],
      failures: sample.events(({ failures: { count } }) => count[id]),
      downHours: sample.amount(({ failures: { minutes, repairs } }) => ratio(minutes[id] / 60, repairs[id])),
      longestDownHours: sample.greatest(({ failures: { longest, repairs } }) =>
        repairs[id] > 0 ? longest[id] / 60 : NaN,
      ),
      availability: sample.share(
        ({ stationShares: shares }) =>
          1 - ratio(shares[id * STATE_COUNT + DOWN], 1 - shares[id * STATE_COUNT + OFF_SHIFT]),
      ),
    }));
}
