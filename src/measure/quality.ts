import type { Tally } from '../flow/accounts/tally.js';
import { column, histogram, over } from './columns.js';

/** Reads the counts of rules 8 to 10 of a run that has ended after `minutes` of observation. */
export function observeQuality(tally: Tally, minutes: number) {
  return {
    /**
     * By inspection: units, first visits and those of them passed, sent back, repaired, scrapped; items
     * missed.
     */
    inspections: tally.inspections,
    /** Minutes of repair work in all. */
    repairMinutes: tally.repairMinutes,
    /** By row of what follows a find: a unit came to the limit of its loops. */
    limitReached: tally.limitReached,
    /** By defect slot. */
    created: tally.created,
    quality: observeItems(tally, minutes),
  };
}

/** The counts as they are, see `tally.ts`; of holds more is told. */
export function observeItems({ quality: { heldMinutes, released, ...counts } }: Tally, minutes: number) {
  return {
    ...counts,
    /** By hold step: mean units held; time from coming to release, minutes, NaN if none was released. */
    inHold: column(heldMinutes, (unitMinutes) => over(unitMinutes, minutes)),
    holdMean: column(released, ({ mean }) => mean),
    /** By hold step: the same times in bins of `bins.ts`. */
    holdTimes: released.map(histogram),
  };
}
