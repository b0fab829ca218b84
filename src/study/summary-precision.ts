import { number } from './format.js';
import { isPrecise, relativeHalfWidth, replicationsFor } from './precision.js';
import type { Later } from './later.js';
import type { Estimate, Finding } from './results.js';
import type { PrecisionMeasure, PrecisionResult } from './results-precision.js';
import type { Sample } from './sample.js';
import { costPerUnit } from './summary-costs.js';
import { meanLeadDays } from './summary-lead-time.js';
import { meanWip } from './summary-series.js';
import { throughput } from './summary-throughput.js';

/** How precisely a study is to know what. */
export interface PrecisionAsked {
  /** Relative error, for example 0.01. */
  readonly asked: number;
  readonly of: readonly PrecisionMeasure[];
  /** Replications at most. */
  readonly most: number;
}

/** What a precision is asked of. */
export type Measured = readonly { readonly name: PrecisionMeasure; readonly estimate: Later<Estimate> }[];

const ESTIMATES: Readonly<Record<PrecisionMeasure, (sample: Sample) => Later<Estimate>>> = {
  throughput: (sample) => throughput(sample).perDay,
  'lead-time': meanLeadDays,
  wip: meanWip,
  cost: (sample) => {
    const cost = costPerUnit(sample);
    if (cost === null)
      throw new RangeError(
        'precision: expected a scenario with costs, saw one without; give it prices, or leave cost out',
      );
    return cost;
  },
};

export const measured = (sample: Sample, of: readonly PrecisionMeasure[]): Measured =>
  of.map((name) => ({ name, estimate: ESTIMATES[name](sample) }));

/** The number of replications to go on to; null: all is known well enough, or the limit is reached. Batches at most double what there is. */
export function replicationsWanted(
  found: Measured,
  done: number,
  { asked, most }: PrecisionAsked,
): number | null {
  const open = found.map(({ estimate }) => estimate.value).filter((estimate) => !isPrecise(estimate, asked));
  if (open.length === 0 || done >= most) return null;
  const wanted = Math.max(...open.map((estimate) => replicationsFor(estimate, asked)));
  return Math.min(most, 2 * done, Math.max(done + 1, wanted));
}

/** What came of it. */
export function precisionOf(
  found: Measured,
  replications: number,
  { asked }: PrecisionAsked,
): PrecisionResult {
  const measures = found.map(({ name, estimate: { value } }) => {
    const relative = relativeHalfWidth(value);
    return {
      name,
      relativeHalfWidth: Number.isFinite(relative) ? relative : null,
      reached: isPrecise(value, asked),
    };
  });
  return { asked, measures, replications };
}

/** What was not reached. */
export function precisionFindings({ asked, measures, replications }: PrecisionResult): Finding[] {
  const open = measures.filter(({ reached }) => !reached);
  if (open.length === 0) return [];
  const each = open
    .map(
      ({ name, relativeHalfWidth: half }) =>
        `${name} ${half === null ? 'has no interval' : `is known to ${number(100 * half)} %`}`,
    )
    .join(', ');
  return [
    {
      kind: 'precision',
      replications,
      text: `a precision of ${number(100 * asked)} % is not reached within ${replications} replications: ${each}; raise --most or ask for less`,
    },
  ];
}
