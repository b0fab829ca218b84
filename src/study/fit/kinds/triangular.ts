import { log } from '../../../random/elementary.js';
import type { Triangular } from '../../../random/kinds/three-points.js';
import { bestEnds, type Ends } from './ends.js';
import type { Family } from './family.js';
import { hasNoSpread, type Sample } from './sample.js';

/**
 * With the ends given, the likelihood is greatest with the likeliest time at one of the values (E. H. Oliver,
 * The American Statistician 26(5), 1972; S. Kotz & J. R. van Dorp, Beyond Beta, 2004, chapter 1; from memory):
 * all are tried. The ends are climbed over; where the likeliest time is inside, no value lies on an end, since
 * the density there is 0.
 */
export const triangular: Family<Triangular> = {
  name: 'triangular',
  parameters: 3,
  isBounded: true,
  fit(sample) {
    if (!(sample.least > 0) || hasNoSpread(sample)) return undefined;
    const ends = bestEnds(sample, (tried) => bestPeak(sample, tried).value),
      { low, high } = ends;
    return { kind: 'triangular', low, likely: sample.values[bestPeak(sample, ends).at], high };
  },
  curve({ low, likely, high }) {
    const width = high - low,
      rising = width * (likely - low),
      falling = width * (high - likely),
      peak = (likely - low) / width;
    return {
      logDensity(x) {
        if (x < low || x > high) return -Infinity;
        return (
          log(2 / width) + log(x <= likely ? ratio(x - low, likely - low) : ratio(high - x, high - likely))
        );
      },
      cdf(x) {
        if (x <= low) return 0;
        if (x >= high) return 1;
        return x <= likely ? ((x - low) * (x - low)) / rising : 1 - ((high - x) * (high - x)) / falling;
      },
      quantile: (p) => (p < peak ? low + Math.sqrt(p * rising) : high - Math.sqrt((1 - p) * falling)),
    };
  },
};

/** 1 at the peak, also where it is an end. */
const ratio = (part: number, whole: number): number => (whole === 0 ? 1 : part / whole);

/** The value at which the peak is likeliest, and the log-likelihood then. */
function bestPeak({ n }: Sample, { low, high, fromLow, toHigh }: Ends): { at: number; value: number } {
  let before = 0,
    after = 0,
    best = -Infinity,
    at = 0;
  for (let i = 0; i < n; i++) after += toHigh[i];
  for (let i = 0; i < n; i++) {
    after -= toHigh[i];
    const value = before - i * fromLow[i] + after - (n - 1 - i) * toHigh[i];
    if (value > best) {
      best = value;
      at = i;
    }
    before += fromLow[i];
  }
  return { at, value: best + n * log(2 / (high - low)) };
}
