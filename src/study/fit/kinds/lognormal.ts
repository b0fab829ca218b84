import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { exp, log } from '../../../random/elementary.js';
import type { Lognormal } from '../../../random/kinds/lognormal.js';
import { LOG_ROOT_2PI, normalBelow } from '../../statistics/functions/normal.js';
import type { Family } from './family.js';
import { hasNoSpread } from './sample.js';

/**
 * Mean and standard deviation (by n) of the logarithms (Johnson, Kotz & Balakrishnan, Continuous Univariate
 * Distributions 1, 1994, chapter 14; from memory).
 */
export const lognormal: Family<Lognormal> = {
  name: 'lognormal',
  parameters: 2,
  isBounded: false,
  fit(sample) {
    const { n, values, least, meanLog: mu } = sample;
    if (!(least > 0) || hasNoSpread(sample)) return undefined;
    let squares = 0;
    for (let i = 0; i < n; i++) {
      const away = log(values[i]) - mu;
      squares += away * away;
    }
    return { kind: 'lognormal', mu, sigma: Math.sqrt(squares / n) };
  },
  curve({ mu, sigma }) {
    const logSigma = log(sigma);
    return {
      logDensity(x) {
        if (!(x > 0)) return -Infinity;
        const z = (log(x) - mu) / sigma;
        return -0.5 * z * z - log(x) - logSigma - LOG_ROOT_2PI;
      },
      cdf: (x) => (x > 0 ? normalBelow((log(x) - mu) / sigma) : 0),
      quantile: (p) => exp(mu + sigma * normalQuantile(p, 0, 1)),
    };
  },
};
