import type { Observation } from '../measure/observation.js';
import { busiest } from './summary-bottlenecks.js';

/** What the search for a rate keeps of a replication. */
export interface RateReading {
  readonly outcome: Observation['outcome'];
  readonly enteredIn: Int32Array;
  readonly shippedIn: Int32Array;
  /** In the time observed. */
  readonly scrapped: number;
  /** Mean work in process by week, and over the time observed. */
  readonly wipIn: Float64Array;
  readonly wip: number;
  readonly leadMeanDays: number;
  readonly leadP90Days: number;
  /** Of the highest utilisation, in the order of `Observation.utilisation`; -1: none was active. */
  readonly busiest: number;
}

const DAY = 1440;

export function readRate(seen: Observation): RateReading {
  const weeks = seen.shippedIn.length;
  const total = (week: number): number => {
    let all = 0;
    for (let at = week; at < seen.wipIn.length; at += weeks) all += seen.wipIn[at]!;
    return all;
  };
  return {
    outcome: seen.outcome,
    enteredIn: seen.enteredIn,
    shippedIn: seen.shippedIn,
    scrapped: seen.scrapped,
    wipIn: Float64Array.from({ length: weeks }, (_, week) => total(week)),
    wip: seen.wip,
    leadMeanDays: seen.leadMean / DAY,
    leadP90Days: seen.leadP90 / DAY,
    busiest: busiest(seen),
  };
}
