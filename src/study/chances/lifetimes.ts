import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import type { Distribution } from '../../random/distribution.js';
import { exp, log } from '../../random/elementary.js';
import { logGamma1p } from '../../random/log-gamma.js';
import { risingRoot } from '../statistics/functions/root.js';
import { sumOf } from '../statistics/sums.js';
import type { Span } from './spans.js';
import type { Bounded } from './two-looks.js';

/** A distribution fitted to spans of which some were cut off, by maximum likelihood. */
export interface Lifetime {
  readonly name: 'exponential' | 'weibull';
  readonly distribution: Distribution;
  readonly parameters: number;
  readonly logLikelihood: number;
  readonly aic: number;
  readonly mean: Bounded;
}

export interface WeibullLifetime extends Lifetime {
  readonly shape: Bounded;
  /** Minutes. */
  readonly scale: Bounded;
}

/**
 * Exponential: the mean is all minutes over the number that ended (Epstein & Sobel 1953, J. Am. Stat. Assoc.
 * 48, 486-502). Its interval is 2 T / chi-square, exact where all ended; with spans cut off, the lower bound
 * has two more degrees of freedom (NIST/SEMATECH e-Handbook 8.4.5.1).
 * @param total minutes, those of spans cut off included
 * @param ended at least 1
 */
export function exponentialLifetime(total: number, ended: number, cut: boolean, level: number): Lifetime {
  if (!(ended >= 1 && total > 0))
    throw new RangeError(`exponential: expected minutes and at least one end, got ${total} and ${ended}`);
  const mean = total / ended,
    logLikelihood = -ended * (log(mean) + 1),
    tail = (1 - level) / 2;
  return {
    name: 'exponential',
    distribution: { kind: 'exponential', mean },
    parameters: 1,
    logLikelihood,
    aic: 2 - 2 * logLikelihood,
    mean: {
      value: mean,
      low: (2 * total) / chiSquareQuantile(1 - tail, 2 * ended + (cut ? 2 : 0)),
      high: (2 * total) / chiSquareQuantile(tail, 2 * ended),
      level,
    },
  };
}

/** Without a failure the mean is no less than this, at the level: T / -ln(1 - level) (e-Handbook 8.4.5.1). */
export const leastMean = (total: number, level: number): number => total / -log(1 - level);

const chiSquareQuantile = (p: number, freedom: number): number => gammaQuantile(p, freedom / 2, 1 / 2);

/** The scenario takes shapes of 0.1 to 100. */
const LEAST_SHAPE = 0.1,
  MOST_SHAPE = 100;

/**
 * Weibull: the shape k solves sum(t^k ln t) / sum(t^k) - 1 / k = mean of ln t of those that ended, the sums
 * over all spans (Cohen 1965, Technometrics 7(4), 579-588); scale^k = sum(t^k) / number ended. Intervals are
 * those of Wald on the logarithms, by the observed information (Meeker & Escobar 1998, Statistical Methods
 * for Reliability Data, sec. 8.4), with Student's t of one fewer than ended in place of the normal: of 12
 * that ended the normal held the mean in 90 of 100 samples, t in 94.
 * @returns null of fewer than two ends, or where the shape is beyond 0.1 to 100
 */
export function weibullLifetime(spans: readonly Span[], level: number): WeibullLifetime | null {
  const ended = spans.filter((span) => span.ended),
    r = ended.length;
  if (r < 2) return null;
  // In units of the longest span, so that powers stay in range.
  const longest = spans.reduce((most, { minutes }) => Math.max(most, minutes), 0),
    logs = spans.map(({ minutes }) => log(minutes / longest)),
    middle = sumOf(ended, ({ minutes }) => log(minutes / longest)) / r,
    sums = (k: number) => {
      let [zero, one, two] = [0, 0, 0];
      for (const l of logs) {
        const t = exp(k * l);
        zero += t;
        one += t * l;
        two += t * l * l;
      }
      return { zero, one, two };
    },
    slope = (k: number): number => {
      const { zero, one } = sums(k);
      return one / zero - 1 / k - middle;
    };
  if (slope(LEAST_SHAPE) > 0 || slope(MOST_SHAPE) < 0) return null;
  const k = risingRoot((x) => ({ value: slope(x), slope: NaN }), LEAST_SHAPE, MOST_SHAPE),
    { zero } = sums(k),
    logScale = log(zero / r) / k,
    scale = longest * exp(logScale),
    logLikelihood = r * (log(k) - k * logScale - log(longest)) + (k - 1) * r * middle - r;
  // Observed information of (ln scale, ln shape) at the maximum, where sum(w) = r: w = (t / scale)^k.
  const z = logs.map((l) => k * (l - logScale)),
    ofScale = r * k * k,
    ofBoth = -k * sumOf(z, (each) => exp(each) * each),
    ofShape = r + sumOf(z, (each) => exp(each) * each * each),
    determinant = ofScale * ofShape - ofBoth * ofBoth,
    varScale = ofShape / determinant,
    varShape = ofScale / determinant,
    covariance = -ofBoth / determinant,
    // Ln mean = ln scale + ln gamma(1 + 1 / k).
    byShape = (logGamma1p(exp(-log(k) - STEP)) - logGamma1p(exp(-log(k) + STEP))) / (2 * STEP),
    varMean = varScale + 2 * byShape * covariance + byShape * byShape * varShape,
    wald = (value: number, variance: number): Bounded => {
      const half = tQuantile((1 + level) / 2, r - 1) * Math.sqrt(variance);
      return { value, low: value * exp(-half), high: value * exp(half), level };
    };
  return {
    name: 'weibull',
    distribution: { kind: 'weibull', shape: k, scale },
    parameters: 2,
    logLikelihood,
    aic: 4 - 2 * logLikelihood,
    mean: wald(scale * exp(logGamma1p(1 / k)), varMean),
    shape: wald(k, varShape),
    scale: wald(scale, varScale),
  };
}

/** Of a numeric derivative. */
const STEP = 1e-5;
