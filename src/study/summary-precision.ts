import { number } from './format.js';
import { isPrecise, relativeHalfWidth, replicationsFor } from './precision.js';
import type { Estimate, Finding, Results } from './results.js';
import type { PrecisionMeasure, PrecisionResult } from './results-precision.js';
import type { Sample } from './sample.js';
import { costs } from './summary-costs.js';
import { leadTime } from './summary-lead-time.js';
import { wip } from './summary-series.js';
import { throughput } from './summary-throughput.js';

/** How precisely a study is to know what. */
export interface PrecisionAsked {
  /** Relative error, for example 0.01. */
  readonly asked: number;
  readonly of: readonly PrecisionMeasure[];
  /** Replications at most. */
  readonly most: number;
}

/** What a precision can be asked of: a small part of the results, reckoned in the same way. */
export type Measured = Pick<Results, 'throughput' | 'leadTime' | 'wip' | 'costs'>;
export const measured = (sample: Sample): Measured => ({ throughput: throughput(sample), leadTime: leadTime(sample), wip: wip(sample), costs: costs(sample) });

const ESTIMATES: Readonly<Record<PrecisionMeasure, (found: Measured) => Estimate>> = {
  'throughput': ({ throughput }) => throughput.perDay,
  'lead-time': ({ leadTime }) => leadTime.mean,
  'wip': ({ wip }) => wip.total,
  'cost': ({ costs }) => {
    if (costs === null) throw new RangeError('precision: expected a scenario with costs, saw one without; give it prices, or leave cost out');
    return costs.perUnit;
  },
};

/** The number of replications to go on to; null: all is known well enough, or the limit is reached. Batches at most double what there is. */
export function replicationsWanted(found: Measured, done: number, { asked, of, most }: PrecisionAsked): number | null {
  const open = of.map((measure) => ESTIMATES[measure](found)).filter((estimate) => !isPrecise(estimate, asked));
  if (open.length === 0 || done >= most) return null;
  const wanted = Math.max(...open.map((estimate) => replicationsFor(estimate, asked)));
  return Math.min(most, 2 * done, Math.max(done + 1, wanted));
}

/** What came of it. */
export function precisionOf(found: Measured, replications: number, { asked, of }: PrecisionAsked): PrecisionResult {
  const measures = of.map((name) => {
    const estimate = ESTIMATES[name](found), relative = relativeHalfWidth(estimate);
    return { name, relativeHalfWidth: Number.isFinite(relative) ? relative : null, reached: isPrecise(estimate, asked) };
  });
  return { asked, measures, replications };
}

/** What was not reached. */
export function precisionFindings({ asked, measures, replications }: PrecisionResult): Finding[] {
  const open = measures.filter(({ reached }) => !reached);
  if (open.length === 0) return [];
  const each = open.map(({ name, relativeHalfWidth: half }) => `${name} ${half === null ? 'has no interval' : `is known to ${number(100 * half)} %`}`).join(', ');
  return [{ kind: 'precision', replications, text: `a precision of ${number(100 * asked)} % is not reached within ${replications} replications: ${each}; raise --most or ask for less` }];
}
