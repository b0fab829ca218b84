import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { log } from '../../../random/elementary.js';
import type { Normal } from '../../../random/kinds/normal.js';
import { LOG_ROOT_2PI, normalAbove, normalHazard } from '../../statistics/functions/normal.js';
import { risingRoot } from '../../statistics/functions/root.js';
import type { Family } from './family.js';
import { hasNoSpread } from './sample.js';

/** Cut further out than this (in sd) it is an exponential, to a part in 400 of the squared cv. */
const FURTHEST_CUT = 30;
/** A scenario's normal has a longest time; so few values would lie beyond it. */
const BEYOND = 1e-9;

/**
 * A normal of which only values above 0 are kept. It is an exponential family of the first two moments, so at
 * the greatest likelihood it has the sample's mean m and variance v (by n). With the cut a sd from the mean
 * before the cut, and h the hazard of the standard normal there, m = sd (h - a) and v = sd^2 (1 - h (h - a))
 * (A. C. Cohen, Annals of Mathematical Statistics 21, 1950, 557-569), so v / m^2, which rises with a, gives
 * a. It stays below 1: a sample with a cv of 1 or more has no greatest likelihood, but nears the exponential
 * (J. del Castillo, Annals of the Institute of Statistical Mathematics 46, 1994, 57-66; both from memory).
 */
export const cutNormal: Family<Normal> = {
  name: 'normal cut at 0',
  parameters: 2,
  isBounded: false,
  fit(sample) {
    const { mean, variance } = sample,
      square = variance / (mean * mean);
    if (hasNoSpread(sample) || !(square < squaredCv(FURTHEST_CUT).value)) return undefined;
    const a = risingRoot(
        (at) => {
          const { value, slope } = squaredCv(at);
          return { value: value - square, slope };
        },
        -1 / Math.sqrt(square),
        FURTHEST_CUT,
        Math.min(0, 0.5 - 1 / Math.sqrt(square)),
      ),
      sd = mean / (normalHazard(a) - a);
    return {
      kind: 'normal',
      mean: -a * sd,
      sd,
      low: 0,
      high: -sd * (a + normalQuantile(BEYOND * normalAbove(a), 0, 1)),
    };
  },
  curve({ mean, sd, low, high }) {
    const kept = normalAbove((low - mean) / sd),
      constant = LOG_ROOT_2PI + log(sd) + log(kept);
    return {
      logDensity(x) {
        const z = (x - mean) / sd;
        return x < low || x > high ? -Infinity : -0.5 * z * z - constant;
      },
      cdf: (x) => (x <= low ? 0 : x >= high ? 1 : 1 - normalAbove((x - mean) / sd) / kept),
      quantile: (p) =>
        p <= 0 ? low : Math.min(high, Math.max(low, mean - sd * normalQuantile((1 - p) * kept, 0, 1))),
    };
  },
};

/** Squared cv with the cut at `a`, and how fast it rises with it (the hazard's slope is h (h - a)). */
function squaredCv(a: number): { value: number; slope: number } {
  const hazard = normalHazard(a),
    beyond = hazard - a,
    share = 1 - hazard * beyond,
    square = beyond * beyond;
  return {
    value: share / square,
    slope: ((2 * share * share) / beyond - hazard * (square + hazard * beyond - 1)) / square,
  };
}
