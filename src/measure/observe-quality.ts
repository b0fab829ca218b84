import type { Tally } from '../flow/tally.js';
import type { QualityObservation } from './observation-quality.js';
import { binQuantile } from './quantile.js';

/** Reads the counts of rules 8 to 10 of a run that has ended after `minutes` of observation. */
export function observeQuality({ quality: tally }: Tally, minutes: number): QualityObservation {
  const {
    made,
    merged,
    replaced,
    shippedUnfound,
    shippedNoted,
    found,
    repairMinutes,
    cameToHold,
    held,
    mended,
    compared,
    differMinutes,
  } = tally;
  return {
    made,
    merged,
    replaced,
    shippedUnfound,
    shippedNoted,
    found,
    repairMinutes,
    cameToHold,
    held,
    mended,
    compared,
    differMinutes,
    inHold: tally.heldMinutes.map((unitMinutes) => (minutes > 0 ? unitMinutes / minutes : 0)),
    holdMean: tally.releasedMinutes.map((sum, hold) => sum / tally.releasedUnits[hold]),
    // The least is not kept: what is below the first bin is nothing to a planner.
    holdP95: Float64Array.from(tally.releasedBins, (bins, hold) =>
      binQuantile(bins, 0.95, 0, tally.releasedMost[hold]),
    ),
  };
}
