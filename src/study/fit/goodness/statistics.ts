import { log } from '../../../random/elementary.js';

/** No share of a cumulative curve is told apart from 0 or 1 below this. */
const TINIEST = 1e-16;

/**
 * A^2 = -n - (1/n) sum (2i - 1) (ln F_i + ln(1 - F_(n+1-i))) (T. W. Anderson & D. A. Darling, Journal of the
 * American Statistical Association 49, 1954, 765-769).
 * @param shares the cumulative curve at the values, in rising order
 * @param nearest shares are taken to lie at least so far from 0 and 1: half a value's share for a distribution
 *   that ends at the ends of the sample, of which A^2 would be infinite
 */
export function andersonDarling(shares: Float64Array, nearest = TINIEST): number {
  const n = shares.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const low = Math.max(nearest, shares[i]),
      high = Math.max(nearest, 1 - shares[n - 1 - i]);
    sum += (2 * i + 1) * (log(low) + log(high));
  }
  return -n - sum / n;
}

/**
 * The greatest distance between the cumulative curve and the steps of the sample (Kolmogorov 1933; Smirnov
 * 1948).
 * @param shares the cumulative curve at the values, in rising order
 */
export function kolmogorovSmirnov(shares: Float64Array): number {
  const n = shares.length;
  let most = 0;
  for (let i = 0; i < n; i++) most = Math.max(most, (i + 1) / n - shares[i], shares[i] - i / n);
  return most;
}

/** The cumulative curve at values in rising order; of equal ones it is reckoned once. */
export function sharesAt(values: Float64Array, cdf: (x: number) => number): Float64Array {
  const shares = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++)
    shares[i] = i > 0 && values[i] === values[i - 1] ? shares[i - 1] : cdf(values[i]);
  return shares;
}
