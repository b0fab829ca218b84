import { STATE_COUNT, DOWN, OFF_SHIFT } from '../flow/states.js';
import type { Pending } from './later.js';
import type { FailureResult } from './results-failures.js';
import { ratio, type Sample } from './sample.js';

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
