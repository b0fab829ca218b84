import { number } from '../format.js';
import { meanLeadDays } from '../programme/lead-time.js';
import { meanWip, throughput } from '../programme/series.js';
import type { Deferred } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import { costPerUnit } from '../sections/costs.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import type { Finding } from './findings.js';
import { LEAST_FOR_PRECISION, type PrecisionMeasure } from './precision-measures.js';

/** How precise the measures asked for became. */
export interface PrecisionResult {
  /** Greatest relative error asked, 0..1; half-width / |mean| must be at most asked / (1 + asked). */
  readonly asked: number;
  /** Relative half-width null: there is no interval. */
  readonly measures: readonly {
    readonly name: PrecisionMeasure;
    readonly relativeHalfWidth: number | null;
    readonly reached: boolean;
  }[];
  readonly replications: number;
}

/**
 * Relative half-width of an interval; Infinity where there is none, or where the mean is 0 and the interval
 * is not.
 */
export function relativeHalfWidth(estimate: Estimate): number {
  const { low, high } = boundsOf(estimate);
  const half = (high - low) / 2;
  return half === 0 ? 0 : half / Math.abs(estimate.mean);
}

/**
 * Whether a mean is known to the relative error asked: half-width / |mean| <= g / (1 + g), which makes the
 * error at most g of the true mean (Law 2015, sec. 9.4.1; from memory), and no fewer than thirty
 * replications.
 * @param asked g, for example 0.01
 */
export function isPrecise(estimate: Estimate, asked: number): boolean {
  return estimate.n >= LEAST_FOR_PRECISION && relativeHalfWidth(estimate) <= asked / (1 + asked);
}

/**
 * Replications that are likely to be needed, as the half-width falls with the root of their number; at least
 * one more than there are.
 */
export function replicationsFor(estimate: Estimate, asked: number): number {
  const ratio = relativeHalfWidth(estimate) / (asked / (1 + asked)),
    needed = Number.isFinite(ratio)
      ? Math.ceil(estimate.n * ratio * ratio)
      : (estimate.needs ?? 2 * estimate.n);
  return Math.max(LEAST_FOR_PRECISION, estimate.n + 1, needed);
}

/** How precisely a study is to know what. */
export interface PrecisionAsked {
  /** Relative error, for example 0.01. */
  readonly asked: number;
  readonly of: readonly PrecisionMeasure[];
  /** Replications at most. */
  readonly most: number;
}

/** What a precision is asked of. */
export type Measured = readonly { readonly name: PrecisionMeasure; readonly estimate: Deferred<Estimate> }[];

const ESTIMATES: Readonly<Record<PrecisionMeasure, (sample: Sample) => Deferred<Estimate>>> = {
  throughput: (sample) => throughput(sample).perDay,
  'lead-time': meanLeadDays,
  wip: meanWip,
  cost: (sample) => {
    const cost = costPerUnit(sample);
    if (cost === null)
      throw new RangeError(
        'precision: expected a scenario with costs, got one without; give it prices, or leave cost out',
      );
    return cost;
  },
};

export const measured = (sample: Sample, of: readonly PrecisionMeasure[]): Measured =>
  of.map((name) => ({ name, estimate: ESTIMATES[name](sample) }));

/**
 * The number of replications to go on to; null: all is known well enough, or the limit is reached. Batches at
 * most double what there is.
 */
function replicationsWanted(found: Measured, done: number, { asked, most }: PrecisionAsked): number | null {
  const open = found.map(({ estimate }) => estimate.value).filter((estimate) => !isPrecise(estimate, asked));
  if (open.length === 0 || done >= most) return null;
  const wanted = Math.max(...open.map((estimate) => replicationsFor(estimate, asked)));
  return Math.min(most, 2 * done, Math.max(done + 1, wanted));
}

/** So many more, as a share of those that there are, are run once a study could stop. */
const SUPPLEMENT = 0.25;

/**
 * Decides how far a study goes on that is asked for a precision. It is likelier to stop where its spread
 * happens to look small; so when it could, a quarter more replications are run, whatever they show, and it
 * stops if it still can. That is our own rule; docs/measures.md has by how much it was measured to help.
 */
export class UntilPrecise {
  private isSupplemented = false;

  constructor(
    private readonly found: Measured,
    private readonly asked: PrecisionAsked,
  ) {}

  /** The number of replications to go on to from those done; null: that is all. */
  next(done: number): number | null {
    const { found, asked, isSupplemented } = this,
      wanted = replicationsWanted(found, done, asked);
    this.isSupplemented = wanted === null && !isSupplemented && done < asked.most;
    return this.isSupplemented ? Math.min(asked.most, Math.ceil(done * (1 + SUPPLEMENT))) : wanted;
  }
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
      text:
        `a precision of ${number(100 * asked)} % is not reached within ${replications} replications: ` +
        `${each}; raise --most or ask for less`,
    },
  ];
}
