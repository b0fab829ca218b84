import type { Tally } from '../flow/accounts/tally.js';
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

/**
 * Rules 8 to 10 in one replication. Columns by slot and find are in the order of the model's; see
 * `flow/tally-quality.ts`.
 */
export interface QualityObservation {
  /**
   * By slot: items made; one with another of the same slot; gone with a part replaced; shipped open: never
   * found, found and noted.
   */
  readonly made: Float64Array;
  readonly merged: Float64Array;
  readonly replaced: Float64Array;
  readonly shippedUnfound: Float64Array;
  readonly shippedNoted: Float64Array;
  /** By find: items found for the first time, and minutes of repair that followed. */
  readonly found: Float64Array;
  readonly repairMinutes: Float64Array;
  /**
   * By hold step: units that came, were held, items mended; mean units held; time from coming to release,
   * minutes, NaN if none was released.
   */
  readonly cameToHold: Float64Array;
  readonly held: Float64Array;
  readonly mended: Float64Array;
  readonly inHold: Float64Array;
  readonly holdMean: Float64Array;
  readonly holdP95: Float64Array;
  /**
   * By inspection * 4 + 2 * (something found at the earlier one) + (something found here): units at the first
   * visits of both.
   */
  readonly compared: Float64Array;
  /** By inspection: extra work where the two differed, minutes. */
  readonly differMinutes: Float64Array;
}
