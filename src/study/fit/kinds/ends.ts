import { exp, log } from '../../../random/elementary.js';
import { highest, type Point } from '../../statistics/functions/highest.js';
import type { Sample } from './sample.js';

/** Ends of a distribution about a sample, with the logarithms of the distances of each value from both. */
export interface Ends {
  readonly low: number;
  readonly high: number;
  readonly fromLow: Float64Array;
  readonly toHigh: Float64Array;
}

/** Distances of the ends from the sample's, as shares of its range. */
const NEAREST = 1e-9,
  FURTHEST = 100;

/**
 * Ends of greatest likelihood, on or beyond those of the sample and not below 0, by climbing over the
 * logarithms of the two distances: from ends off the sample's, and from one of them on it, where the
 * likelihood of a triangle or a pert can have another peak (low and likeliest time both the least value).
 * @param best the greatest log-likelihood with these ends, over what else there is to fit
 */
export function bestEnds(sample: Sample, best: (ends: Ends) => number): Ends {
  const { n, values, least, greatest } = sample,
    range = greatest - least,
    fromLow = new Float64Array(n),
    toHigh = new Float64Array(n);
  const endsAt = ([u, v]: Point): Ends => {
    const low = Math.max(0, least - range * shareOf(u)),
      high = greatest + range * shareOf(v);
    for (let i = 0; i < n; i++) {
      fromLow[i] = log(values[i] - low);
      toHigh[i] = log(high - values[i]);
    }
    return { low, high, fromLow, toHigh };
  };
  const off = log(1 / Math.sqrt(n)),
    on = log(NEAREST);
  const starts: Point[] = [
    [off, off],
    [on, off],
    [off, on],
  ];
  return endsAt(highest((at) => best(endsAt(at)), starts, { within: 1e-7, most: 60 }).at);
}

const shareOf = (logarithm: number): number => Math.min(FURTHEST, Math.max(NEAREST, exp(logarithm)));
