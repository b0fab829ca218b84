import type { Tally } from '../flow/accounts/tally.js';
import { column, over } from './columns.js';
import { binQuantile } from './quantile.js';

/** Reads the counts of rules 8 to 10 of a run that has ended after `minutes` of observation. */
export function observeQuality(tally: Tally, minutes: number) {
  return {
    /**
     * By inspection: units, first visits and those of them passed, sent back, repaired, scrapped; items
     * missed.
     */
    inspections: {
      inspected: tally.inspected,
      firstVisits: tally.firstVisits,
      firstPasses: tally.firstPasses,
      sentBack: tally.sentBack,
      repaired: tally.repaired,
      scrapped: tally.scrappedAt,
      escaped: tally.escaped,
    },
    /** Minutes of repair work in all. */
    repairMinutes: tally.repairMinutes,
    /** By row of what follows a find: a unit came to the limit of its loops. */
    limitReached: tally.limitReached,
    /** By defect slot. */
    created: tally.created,
    quality: observeItems(tally, minutes),
  };
}

/** Columns by slot and find are in the order of the model's; see `quality-tally.ts`. */
export function observeItems({ quality: tally }: Tally, minutes: number) {
  return {
    /**
     * By slot: items made; one with another of the same slot; gone with a part replaced; shipped open: never
     * found, found and noted.
     */
    made: tally.made,
    merged: tally.merged,
    replaced: tally.replaced,
    shippedUnfound: tally.shippedUnfound,
    shippedNoted: tally.shippedNoted,
    /** By find: items found for the first time, and minutes of repair that followed. */
    found: tally.found,
    repairMinutes: tally.repairMinutes,
    /**
     * By hold step: units that came, were held, items mended; mean units held; time from coming to release,
     * minutes, NaN if none was released.
     */
    cameToHold: tally.cameToHold,
    held: tally.held,
    mended: tally.mended,
    inHold: column(tally.heldMinutes, (unitMinutes) => over(unitMinutes, minutes)),
    holdMean: column(tally.releasedMinutes, (sum, hold) => sum / tally.releasedUnits[hold]),
    // The least is not kept: what is below the first bin is nothing to a planner.
    holdP95: column(tally.releasedBins, (bins, hold) => binQuantile(bins, 0.95, 0, tally.releasedMost[hold])),
    /**
     * By inspection * 4 + 2 * (something found at the earlier one) + (something found here): units at the
     * first visits of both.
     */
    compared: tally.compared,
    /** By inspection: extra work where the two differed, minutes. */
    differMinutes: tally.differMinutes,
  };
}
