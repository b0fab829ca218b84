import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { Distribution } from '../../../random/distribution.js';
import { normalBelow } from '../../statistics/functions/normal.js';
import { mean } from '../../statistics/sums.js';
import { Draws } from '../goodness/draws.js';
import type { Family } from '../kinds/family.js';
import { type Sample, sampleOf } from '../kinds/sample.js';

/** How far the points of a quantile plot may stray by chance. */
export interface Band {
  /** Minutes, by rank looked at. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Ranks whose points lie outside. */
  readonly outside: readonly number[];
}

export interface BandOptions {
  /** Ranks looked at, from 0. */
  readonly ranks: readonly number[];
  readonly level: number;
  /** Full name of the stream of random numbers. */
  readonly stream: string;
  /** Times were rounded to whole multiples of it; 0 where not. */
  readonly unit: number;
}

const SAME = 1e-9;
/** Values simulated in all, and samples at least and at most. */
const VALUES = 400_000,
  FEWEST = 49,
  MOST = 199;

/**
 * A band that all points of a true sample stay in, with a chance of `level`. Samples are drawn from the
 * fitted distribution and fitted again; of each, F of the value of a rank goes through the normal quantile
 * function, which makes it nearly normal, and the band is its mean +- c sd, with the one c that `level` of
 * the samples stay within at all ranks (the studentized maximum: A. C. Davison & D. V. Hinkley, Bootstrap
 * Methods and their Application, 1997, section 4.2.4, on envelopes; from memory).
 * @returns undefined where hardly a simulated sample can be fitted
 */
export function bandOf(
  family: Family,
  fitted: Distribution,
  sample: Sample,
  { ranks, level, stream, unit }: BandOptions,
): Band | undefined {
  const { n } = sample,
    simulated = Math.max(FEWEST, Math.min(MOST, Math.floor(VALUES / n))),
    draws = new Draws(fitted, n, stream, unit),
    // The least and the greatest time may be the ends of a family themselves.
    nearEnd = family.isBounded ? 0.1 / n : SAME;
  const scoresOf = (values: Sample['values'], cdf: (x: number) => number): number[] =>
    ranks.map((rank) => normalQuantile(Math.min(1 - nearEnd, Math.max(nearEnd, cdf(values[rank]))), 0, 1));
  const all: number[][] = [];
  for (let k = 0; k < simulated; k++) {
    const again = sampleOf(draws.next()),
      refitted = family.fit(again);
    if (refitted !== undefined) all.push(scoresOf(again.values, family.curve(refitted).cdf));
  }
  if (all.length < simulated / 2) return undefined;
  const middles = ranks.map((_, r) => mean(all.map((scores) => scores[r]))),
    spreads = ranks.map((_, r) => {
      const squares = all.reduce((sum, scores) => sum + (scores[r] - middles[r]) ** 2, 0);
      return Math.sqrt(squares / (all.length - 1));
    });
  const away = (scores: readonly number[]): number[] =>
    scores.map((score, r) => (spreads[r] > SAME ? Math.abs(score - middles[r]) / spreads[r] : 0));
  const furthest = all.map((scores) => Math.max(...away(scores))).sort((a, b) => a - b),
    wide = furthest[Math.min(all.length, Math.ceil(level * (all.length + 1))) - 1],
    { cdf, quantile } = family.curve(fitted),
    end = normalQuantile(1 - nearEnd, 0, 1);
  /** At an end its chance is 0, which is no score. */
  const minutesAt = (score: number): number =>
    quantile(family.isBounded && Math.abs(score) >= end - SAME ? +(score > 0) : normalBelow(score));
  return {
    low: middles.map((middle, r) => minutesAt(middle - wide * spreads[r])),
    high: middles.map((middle, r) => minutesAt(middle + wide * spreads[r])),
    outside: away(scoresOf(sample.values, cdf)).flatMap((far, r) => (far > wide ? [ranks[r]] : [])),
  };
}
