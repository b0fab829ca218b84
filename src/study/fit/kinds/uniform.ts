import { log } from '../../../random/elementary.js';
import type { Uniform } from '../../../random/kinds/uniform.js';
import type { Family } from './family.js';
import { hasNoSpread } from './sample.js';

/**
 * The likelihood is greatest where the ends are the least and the greatest value seen (Johnson, Kotz &
 * Balakrishnan, Continuous Univariate Distributions 2, 1995, chapter 26; from memory): always a little too
 * narrow.
 */
export const uniform: Family<Uniform> = {
  name: 'uniform',
  parameters: 2,
  isBounded: true,
  fit: (sample) =>
    hasNoSpread(sample) ? undefined : { kind: 'uniform', low: sample.least, high: sample.greatest },
  curve({ low, high }) {
    const width = high - low;
    return {
      logDensity: (x) => (x < low || x > high ? -Infinity : -log(width)),
      cdf: (x) => Math.min(1, Math.max(0, (x - low) / width)),
      quantile: (p) => low + p * width,
    };
  },
};
