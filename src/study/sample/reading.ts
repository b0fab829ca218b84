import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { lastUnitDay } from '../programme/dates.js';
import { wipByBucket } from '../programme/series.js';
import { unitCost } from '../sections/costs.js';

/**
 * What studies keep of a replication: some two kilobytes, however long the run. Times are days, NaN where
 * there is none.
 */
export interface Reading {
  readonly replication: number;
  readonly outcome: Observation['outcome'];
  readonly shipped: number;
  readonly scrapped: number;
  /** Length observed, and when it ended, minutes since the programme's start. */
  readonly minutes: number;
  readonly endedAt: number;
  /** Mean work in process, units. */
  readonly wip: number;
  readonly leadMeanDays: number;
  readonly leadP90Days: number;
  /** When the last unit was shipped, days since the start; NaN unless the programme was finished. */
  readonly lastUnitDay: number;
  /** Money a unit shipped; NaN without prices. */
  readonly costPerUnit: number;
  /** Units shipped by bucket of the time series, and mean work in process there. */
  readonly shippedIn: Int32Array;
  readonly wipIn: Float64Array;
  /** As `Observation.shippedOn`. */
  readonly shippedOn: Int32Array;
  /** By resource, in the order of `Observation.utilisation`. */
  readonly utilisation: Float64Array;
}

/** Reads the replications of one variant; its costs are those of its own scenario. */
export function readingOf(scenario: Scenario, model: Model): (observation: Observation) => Reading {
  const cost = unitCost(scenario, model),
    buckets = Math.max(0, model.programme.bucketEdges.length - 1);
  return (seen) => ({
    replication: seen.replication,
    outcome: seen.outcome,
    shipped: seen.shipped,
    scrapped: seen.scrapped,
    minutes: seen.minutes,
    endedAt: seen.endedAt,
    wip: seen.wip,
    leadMeanDays: seen.leadMean / MINUTES_PER_DAY,
    leadP90Days: seen.leadP90 / MINUTES_PER_DAY,
    lastUnitDay: lastUnitDay(seen),
    costPerUnit: cost === null ? NaN : cost(seen),
    shippedIn: seen.shippedIn,
    shippedOn: seen.shippedOn,
    wipIn: wipByBucket(seen, buckets),
    utilisation: seen.utilisation,
  });
}
