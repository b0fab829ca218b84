import { exp, expm1, log, log1p } from '../../../random/elementary.js';
import type { Weibull } from '../../../random/kinds/weibull.js';
import { power } from '../../../random/power.js';
import { risingRoot } from '../../statistics/functions/root.js';
import type { Family } from './family.js';
import { hasNoSpread } from './sample.js';

/**
 * The shape k solves sum x^k ln x / sum x^k - 1/k = mean of ln x, of which the left rises with k; the scale
 * is (mean of x^k)^(1/k) (Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1, 1994, chapter
 * 21; from memory). Times are taken as shares of the longest, so that no power is too large.
 */
export const weibull: Family<Weibull> = {
  name: 'weibull',
  parameters: 2,
  isBounded: false,
  fit(sample) {
    const { n, values, least, greatest, meanLog } = sample;
    if (!(least > 0) || hasNoSpread(sample)) return undefined;
    const logs = values.map((x) => log(x / greatest)),
      mean = meanLog - log(greatest);
    let spread = 0;
    for (let i = 0; i < n; i++) spread += (logs[i] - mean) * (logs[i] - mean);
    // The standard deviation of ln x is pi / (k sqrt 6).
    const start = Math.PI / Math.sqrt((6 * spread) / n),
      shape = risingRoot((k) => profile(logs, mean, k), start / 50, start * 50, start);
    let total = 0;
    for (let i = 0; i < n; i++) total += exp(shape * logs[i]);
    return { kind: 'weibull', shape, scale: greatest * power(total / n, 1 / shape) };
  },
  curve({ shape, scale }) {
    const constant = log(shape) - shape * log(scale);
    return {
      logDensity: (x) => (x > 0 ? constant + (shape - 1) * log(x) - power(x / scale, shape) : -Infinity),
      cdf: (x) => (x > 0 ? -expm1(-power(x / scale, shape)) : 0),
      quantile: (p) => scale * power(-log1p(-p), 1 / shape),
    };
  },
};

/** The equation above and its slope, of logarithms of at most 0. */
function profile(logs: Float64Array, mean: number, k: number): { value: number; slope: number } {
  let weights = 0,
    first = 0,
    second = 0;
  for (let i = 0; i < logs.length; i++) {
    const weight = exp(k * logs[i]);
    weights += weight;
    first += weight * logs[i];
    second += weight * logs[i] * logs[i];
  }
  const at = first / weights;
  return { value: at - 1 / k - mean, slope: second / weights - at * at + 1 / (k * k) };
}
