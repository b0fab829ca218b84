import { sampleVariance } from 'simple-statistics';
import { log } from '../../random/elementary.js';
import { power } from '../../random/power.js';
import { sum } from './sums.js';

/** Whether a mean is above a standard, or that is not known yet. */
export type Side = 'above' | 'below' | null;

/**
 * Fully sequential comparison of a mean with a known standard (the check for feasibility of Andradottir & Kim
 * 2010, Naval Research Logistics 57(5), 403-421, with c = 1; the bounds are those of Kim & Nelson 2001; from
 * memory): eta = ((2 beta)^(-2 / (n0 - 1)) - 1) / 2, h^2 = 2 eta (n0 - 1), S^2 the variance of the first n0
 * values. After r of them it is above if the sum of (value - standard) is at least
 * R = max(0, h^2 S^2 / (2 zone) - zone r / 2), below if it is at most -R. A mean at least `zone` above, or
 * below, is told wrongly with a chance of `error` at most, where values are normal.
 * @param values in order; those after the one that decides are not looked at
 * @param first n0, at least 2
 * @param error beta, above 0 and below 1/2
 * @param zone above 0, in the unit of the values
 */
export function sideOf(
  values: readonly number[],
  standard: number,
  { first, zone, error }: { readonly first: number; readonly zone: number; readonly error: number },
): Side {
  if (!(first >= 2)) throw new RangeError(`standard: expected at least 2 first values, got ${first}`);
  if (!(zone > 0)) throw new RangeError(`standard: expected an indifference zone above 0, got ${zone}`);
  if (values.length < first) return null;
  const h2 = (power(2 * error, -2 / (first - 1)) - 1) * (first - 1),
    variance = sampleVariance(values.slice(0, first));
  let over = sum(values.slice(0, first)) - first * standard;
  for (let r = first; ; r++) {
    const bound = Math.max(0, (h2 * variance) / (2 * zone) - (zone * r) / 2);
    if (over >= bound) return 'above';
    if (over <= -bound) return 'below';
    const next = values[r];
    if (next === undefined) return null;
    over += next - standard;
  }
}

/**
 * The same of a share of replications: the sequential probability ratio test (Wald 1945, Ann. Math. Stat. 16,
 * 117-186) of `share - zone` against `share + zone`, both errors being `error`.
 * @param values in order, whether each counts
 * @param zone above 0, so small that both shares lie between 0 and 1
 */
export function sideOfShare(
  values: readonly boolean[],
  share: number,
  { zone, error }: { readonly zone: number; readonly error: number },
): Side {
  const [low, high] = [share - zone, share + zone];
  if (!(low > 0 && high < 1))
    throw new RangeError(`standard: expected shares between 0 and 1, got ${low} and ${high}`);
  const bound = log((1 - error) / error),
    yes = log(high / low),
    no = log((1 - high) / (1 - low));
  let ratio = 0;
  for (const value of values) {
    ratio += value ? yes : no;
    if (ratio >= bound) return 'above';
    if (ratio <= -bound) return 'below';
  }
  return null;
}
