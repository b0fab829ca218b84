import { bottleneckOf } from './summary-bottlenecks.js';
import type { Observation } from '../measure/observation.js';
import type { RunRow } from './results.js';
import type { Sample } from './sample.js';
import { lastShipped } from './summary-last-unit.js';

const DAY = 1440;

/** One row a replication. `heldPerDay` is NaN where no rate is judged. */
export function runs(sample: Sample, heldPerDay: (observation: Observation) => number): RunRow[] {
  return sample.observations.map((each) => ({
    replication: each.replication,
    shipped: each.shipped,
    scrapped: each.scrapped,
    heldPerDay: known(heldPerDay(each)),
    wip: each.wip,
    leadMeanDays: known(each.leadMean / DAY), leadP50Days: known(each.leadP50 / DAY), leadP90Days: known(each.leadP90 / DAY),
    lastShipped: sample.clock.date(lastShipped(each)),
    bottleneck: bottleneckOf(sample, each),
  }));
}

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
