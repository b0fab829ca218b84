import { expm1, log, log1p } from '../../../random/elementary.js';
import type { Exponential } from '../../../random/kinds/exponential.js';
import type { Family } from './family.js';

/**
 * The mean of greatest likelihood is that of the sample (N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous
 * Univariate Distributions 1, 1994, chapter 19; from memory).
 */
export const exponential: Family<Exponential> = {
  name: 'exponential',
  parameters: 1,
  isBounded: false,
  fit: ({ mean }) => (mean > 0 ? { kind: 'exponential', mean } : undefined),
  curve: ({ mean }) => ({
    logDensity: (x) => (x < 0 ? -Infinity : -x / mean - log(mean)),
    cdf: (x) => (x > 0 ? -expm1(-x / mean) : 0),
    quantile: (p) => -mean * log1p(-p),
  }),
};
