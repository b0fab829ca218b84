import { HOLD_NONE } from '../../flow/model/quality.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { unitQuantile } from '../programme/lead-time.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

/** A step at which units are held until what was noted on them is mended. */
export interface HoldResult {
  readonly name: string;
  readonly site: string;
  /** Of the units that came to it. */
  readonly heldShare: Estimate;
  /** Units held or on the way to a place there, mean over time. */
  readonly units: Estimate;
  /** From the end of the step before to the release; P95 of all units released in all replications. */
  readonly daysMean: Estimate;
  readonly daysP95: Estimate;
  /** Items a replication. */
  readonly mended: Estimate;
}

export function holds(sample: Sample): Pending<HoldResult[]> {
  const { quality: columns, steps, stations, siteNames } = sample.model;
  return Array.from(columns.hold.keys())
    .filter((step) => columns.hold[step] !== HOLD_NONE)
    .map((step, h) => ({
      name: steps.names[step],
      site: siteNames[stations.site[steps.station[step]]],
      heldShare: sample.share(({ quality: { held, cameToHold } }) => ratio(held[h], cameToHold[h])),
      units: sample.amount(({ quality: { inHold } }) => inHold[h]),
      daysMean: sample.amount(({ quality: { holdMean } }) => holdMean[h] / MINUTES_PER_DAY),
      daysP95: unitQuantile(sample, 0.95, ({ quality: { holdTimes } }) => holdTimes[h]),
      mended: sample.events(({ quality: { mended } }) => mended[h]),
    }));
}
