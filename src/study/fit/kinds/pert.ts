import { exp, log } from '../../../random/elementary.js';
import type { Pert } from '../../../random/kinds/three-points.js';
import { digamma, trigamma } from '../../statistics/functions/digamma.js';
import { incompleteBeta, logBeta } from '../../statistics/functions/incomplete-beta.js';
import { risingRoot } from '../../statistics/functions/root.js';
import { bestEnds, type Ends } from './ends.js';
import type { Family } from './family.js';
import { hasNoSpread } from './sample.js';

/** Alpha + beta of the beta. */
const SUM = 6;

/**
 * A beta on [low, high] with alpha = 1 + 4 (likely - low) / (high - low) and beta = 6 - alpha (D. G. Malcolm
 * et al. 1959). With the ends given, the log-likelihood is concave in alpha, and greatest where psi(alpha) -
 * psi(6 - alpha) is the mean of ln((x - low) / (high - x)) (as for any beta: Johnson, Kotz & Balakrishnan,
 * Continuous Univariate Distributions 2, 1995, chapter 25; from memory), or at 1 or 5. The ends are climbed
 * over.
 */
export const pert: Family<Pert> = {
  name: 'pert',
  parameters: 3,
  isBounded: true,
  fit(sample) {
    if (!(sample.least > 0) || hasNoSpread(sample)) return undefined;
    const ends = bestEnds(sample, (tried) => bestAlpha(tried).value),
      { low, high } = ends,
      likely = low + ((bestAlpha(ends).alpha - 1) / 4) * (high - low);
    // Where it is the upper end, rounding may put it beyond.
    return { kind: 'pert', low, likely: Math.min(high, likely), high };
  },
  curve({ low, likely, high }) {
    const width = high - low,
      alpha = 1 + (4 * (likely - low)) / width,
      beta = SUM - alpha,
      constant = logBeta(alpha, beta) + (SUM - 1) * log(width);
    const logDensity = (x: number): number =>
      x < low || x > high ? -Infinity : weighed(alpha - 1, x - low) + weighed(beta - 1, high - x) - constant;
    const cdf = (x: number): number => incompleteBeta((x - low) / width, alpha, beta);
    return {
      logDensity,
      cdf,
      quantile(p) {
        if (p <= 0) return low;
        if (p >= 1) return high;
        return risingRoot((x) => ({ value: cdf(x) - p, slope: exp(logDensity(x)) }), low, high, likely);
      },
    };
  },
};

/** Times the logarithm; 0 of none of it, also of 0. */
const weighed = (times: number, of: number): number => (times === 0 ? 0 : times * log(of));

function bestAlpha({ low, high, fromLow, toHigh }: Ends): { alpha: number; value: number } {
  const n = fromLow.length,
    logWidth = log(high - low);
  let below = 0,
    above = 0;
  for (let i = 0; i < n; i++) {
    below += fromLow[i];
    above += toHigh[i];
  }
  below = below / n - logWidth;
  above = above / n - logWidth;
  const slope = (alpha: number): number => digamma(alpha) - digamma(SUM - alpha) - below + above;
  const alpha =
    slope(1) >= 0
      ? 1
      : slope(SUM - 1) <= 0
        ? SUM - 1
        : risingRoot((at) => ({ value: slope(at), slope: trigamma(at) + trigamma(SUM - at) }), 1, SUM - 1);
  const value = (alpha - 1) * below + (SUM - 1 - alpha) * above - logBeta(alpha, SUM - alpha) - logWidth;
  return { alpha, value: n * value };
}
