import type { Durations } from '../flow/accounts/bins.js';
import type { Run } from '../flow/run.js';
import { column, histogram, over } from './columns.js';

/**
 * Reads what became of the units: counts, lead times, work in process, series by bucket, times by build
 * number.
 */
export function observeUnits(run: Run) {
  const { tally, locations } = run,
    minutes = run.now - run.observedFrom;
  return {
    entered: tally.entered,
    shipped: tally.shipped,
    scrapped: tally.scrapped,
    /** Items open on units shipped. */
    openAtShipping: tally.openAtShipping,
    /** Units shipped that had a due date, those of them shipped after it, and by how many minutes in all. */
    due: tally.due,
    late: tally.late,
    lateMinutes: tally.lateMinutes,
    ...leadTimes(tally.leadTimes),
    /** Mean work in process, and by location (sites, then lanes). */
    wip: over(locations.totalArea, minutes),
    wipByLocation: column(locations.area, (unitMinutes) => over(unitMinutes, minutes)),
    /** By bucket. */
    enteredIn: tally.enteredIn,
    shippedIn: tally.shippedIn,
    /**
     * By day of 24 h since the start, up to the last on which something was; empty for a steady-state run
     * without outages.
     */
    shippedOn: tally.shippedOn.slice(0, tally.shippedOn.findLastIndex((units) => units > 0) + 1),
    minutesIn: tally.minutesIn,
    /** Mean work in process by location * buckets + bucket. */
    wipIn: column(tally.unitMinutesIn, (unitMinutes, i) =>
      over(unitMinutes, tally.minutesIn[i % tally.minutesIn.length]),
    ),
    /** By build number - 1, NaN where it did not happen; empty without a quantity. */
    enteredAt: run.enteredAt,
    shippedAt: run.shippedAt,
    optionsOf: run.optionsOf,
    /** When it is due; Infinity where it is not; empty where nothing is due. */
    dueAt: run.dueAt,
  };
}

/** Lead time of units shipped, minutes; NaN if none was. */
function leadTimes(times: Durations) {
  const { first, bins, least, greatest } = histogram(times);
  return {
    leadMean: times.mean,
    leadP50: times.quantile(0.5),
    leadP90: times.quantile(0.9),
    leadP95: times.quantile(0.95),
    leadLeast: least,
    leadGreatest: greatest,
    /** Counts in bins `leadFirstBin`, +1, .. of `bins.ts`. */
    leadFirstBin: first,
    leadBins: bins,
  };
}
