import { binEdge } from '../../flow/accounts/bins.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import type { Folded, Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { type Histogram, PooledQuantiles } from '../statistics/pooled-quantile.js';
import { sumOf } from '../statistics/sums.js';

/** About so many classes; at least two bins of the tally go into one. */
const CLASSES = 40;

/** Of units shipped. */
export interface LeadTimeResult {
  readonly unit: 'days';
  readonly mean: Estimate;
  /** Days in which half and nine in ten of all units of all replications are through. */
  readonly p50: Estimate;
  readonly p90: Estimate;
  /** Pooled over replications: counts between edges (edges.length = counts.length + 1). */
  readonly edges: readonly number[];
  readonly counts: readonly number[];
}

export function leadTime(sample: Sample): Pending<LeadTimeResult> {
  const pooled = pooledTimes(sample, ({ leadFirstBin, leadBins, leadLeast, leadGreatest }) => ({
      first: leadFirstBin,
      bins: leadBins,
      least: leadLeast,
      greatest: leadGreatest,
    })),
    quantile = (p: number) => quantileOf(sample, pooled, p);
  const estimates = {
    unit: 'days' as const,
    mean: meanLeadDays(sample),
    p50: quantile(0.5),
    p90: quantile(0.9),
  };
  return new Deferred<LeadTimeResult>(() => ({ ...estimates, ...classes(pooled.value.histogram) }));
}

/** A quantile, in days, of times of all units of all replications, by the bins of the tally. */
export const unitQuantile = (
  sample: Sample,
  p: number,
  of: (observation: Observation) => Histogram,
): Deferred<Estimate> => quantileOf(sample, pooledTimes(sample, of), p);

const pooledTimes = (sample: Sample, of: (observation: Observation) => Histogram): Folded<PooledQuantiles> =>
  sample.fold(new PooledQuantiles(binEdge), (known, each) => {
    known.add(of(each));
    return known;
  });

const quantileOf = (sample: Sample, times: Folded<PooledQuantiles>, p: number): Deferred<Estimate> =>
  new Deferred(() => times.value.estimate(p, sample.level, MINUTES_PER_DAY));

export const meanLeadDays = (sample: Sample): Deferred<Estimate> =>
  sample.amount(({ leadMean }) => leadMean / MINUTES_PER_DAY);

/** Lead time over all units shipped in all replications, minutes; NaN if there is none. */
export function pooledLeadTime(observations: readonly Pick<Observation, 'shipped' | 'leadMean'>[]): number {
  const shipping = observations.filter(({ shipped }) => shipped > 0);
  return (
    sumOf(shipping, ({ leadMean, shipped }) => leadMean * shipped) / sumOf(shipping, ({ shipped }) => shipped)
  );
}

/**
 * Units of all replications in classes of one width, a round number of days. Within a bin of the tally (0.27
 * % wide) units count as spread evenly, so a class may be off by a part of the bins at its edges; the total
 * is exact.
 */
function classes(all: Histogram | null): Pick<LeadTimeResult, 'edges' | 'counts'> {
  if (all === null) return { edges: [], counts: [] };
  const { first: firstBin, bins, least, greatest } = all,
    last = firstBin + bins.length - 1;
  const width = roundWidth(
    Math.max((greatest - least) / CLASSES, 2 * (binEdge(last + 1) - binEdge(last))) / MINUTES_PER_DAY,
  );
  const first = Math.floor(least / MINUTES_PER_DAY / width),
    end = Math.max(first + 1, Math.ceil(greatest / MINUTES_PER_DAY / width));
  const edges = Array.from({ length: end - first + 1 }, (_, i) => tidy((first + i) * width));

  // Most bins are empty. No unit lies beyond the least and the greatest seen.
  const filled = Array.from(bins, (count, i) => ({ count, bin: firstBin + i }))
    .filter(({ count }) => count > 0)
    .map(({ count, bin }) => ({
      count,
      from: Math.max(binEdge(bin), least),
      to: Math.min(binEdge(bin + 1), greatest),
    }));
  const below = (days: number): number => {
    const minutes = days * MINUTES_PER_DAY;
    let units = 0;
    for (const { count, from, to } of filled) {
      units += minutes >= to ? count : minutes <= from ? 0 : (count * (minutes - from)) / (to - from);
    }
    return Math.round(units);
  };
  return {
    edges,
    counts: edges
      .slice(1)
      .map(
        (edge, i) =>
          (i === end - first - 1 ? below(Infinity) : below(edge)) - (i === 0 ? 0 : below(edges[i])),
      ),
  };
}

/** The least of 1, 2, 2.5, 5 times a power of ten that is no less. */
function roundWidth(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width));
  const factor = [1, 2, 2.5, 5].find((each) => each * power >= width * (1 - 1e-9)) ?? 10;
  return tidy(factor * power);
}

/** Without the last digits of a float, so that 3 * 0.1 is 0.3. */
const tidy = (value: number): number => Number(value.toPrecision(12));
