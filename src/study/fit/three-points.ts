import type { Pert } from '../../random/kinds/three-points.js';
import type { Sample } from './kinds/sample.js';

/** The likeliest time stays this share of the width away from the ends. */
const LEAST_SHARE = 0.1;

/**
 * Three points of a handful of times: the pert that has their mean and their standard deviation (by n - 1),
 * its likeliest time where their median lies between the least and the greatest. Its ends lie beyond those
 * seen, as they must: a handful seldom holds the shortest and the longest that there are. Where the low one
 * would be below 0 it is 0, and the spread less. The rule is our own; mean and variance of a pert are those
 * in src/random (alpha + beta = 6).
 * @param sample two or more values that differ
 */
export function threePoints({ n, values, least, greatest, mean, variance }: Sample): Pert {
  const middle = (values[Math.floor((n - 1) / 2)] + values[Math.ceil((n - 1) / 2)]) / 2,
    share = Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, (middle - least) / (greatest - least))),
    alpha = 1 + 4 * share,
    sd = Math.sqrt((variance * n) / (n - 1)),
    wanted = sd * Math.sqrt(252 / (alpha * (6 - alpha))),
    // The mean lies at alpha / 6 of the width.
    width = Math.min(wanted, (6 * mean) / alpha),
    low = Math.max(0, mean - (width * alpha) / 6);
  return { kind: 'pert', low, likely: low + share * width, high: low + width };
}
