import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { lastShipped } from '../programme/dates.js';
import type { Folded, Sample } from '../sample/sample.js';
import { bottleneckOf } from '../sections/bottlenecks.js';

export interface RunRow {
  readonly replication: number;
  readonly shipped: number;
  readonly scrapped: number;
  readonly heldPerDay: number | null;
  readonly wip: number;
  readonly leadMeanDays: number | null;
  readonly leadP50Days: number | null;
  readonly leadP90Days: number | null;
  readonly lastShipped: string | null;
  readonly bottleneck: string | null;
}

/** A row, but for what was held, which is known only when all replications have come. */
type UnjudgedRow = Omit<RunRow, 'heldPerDay'>;

/** One row a replication. */
export function runs(sample: Sample): Folded<UnjudgedRow[]> {
  const bottleneck = bottleneckOf(sample.model);
  return sample.fold<UnjudgedRow[]>([], (rows, each) => {
    rows.push({
      replication: each.replication,
      shipped: each.shipped,
      scrapped: each.scrapped,
      wip: each.wip,
      leadMeanDays: known(each.leadMean / MINUTES_PER_DAY),
      leadP50Days: known(each.leadP50 / MINUTES_PER_DAY),
      leadP90Days: known(each.leadP90 / MINUTES_PER_DAY),
      lastShipped: sample.clock.date(lastShipped(each)),
      bottleneck: bottleneck(each),
    });
    return rows;
  });
}

/** @param heldPerDay by row, NaN where no rate is judged */
export const withHeld = (rows: readonly UnjudgedRow[], heldPerDay: readonly number[]): RunRow[] =>
  rows.map((row, i) => ({ ...row, heldPerDay: known(heldPerDay[i]) }));

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
