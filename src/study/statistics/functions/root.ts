/** Steps after which an interval of doubles has no middle any more. */
const MOST = 200;
/** A step of this share is the last: Newton's error after it is of the order of its square. */
const SMALL = 1e-13;

/**
 * Where a rising function is 0, between `low` and `high`: Newton's steps where they stay inside the interval
 * that is known to hold it, bisection where not. To 13 digits or more.
 * @param at value and slope; a slope of NaN, or 0, asks for bisection
 */
export function risingRoot(
  at: (x: number) => { readonly value: number; readonly slope: number },
  low: number,
  high: number,
  start = (low + high) / 2,
): number {
  let x = start > low && start < high ? start : (low + high) / 2;
  for (let step = 0; step < MOST; step++) {
    const { value, slope } = at(x);
    if (value === 0) return x;
    if (value < 0) low = x;
    else high = x;
    const next = x - value / slope,
      inside = next > low && next < high && step < MOST / 4,
      to = inside ? next : (low + high) / 2;
    if (Math.abs(to - x) <= SMALL * Math.abs(x) || !(to > low && to < high)) return to;
    x = to;
  }
  return x;
}

/**
 * The value whose cumulative curve is `p`, by Newton's steps and bisection.
 * @param p above 0 and below 1
 * @param low at or below it
 * @param start a first guess above `low`; the upper end is sought from there
 */
export function quantileBy(
  cdf: (x: number) => number,
  density: (x: number) => number,
  p: number,
  low: number,
  start: number,
): number {
  let high = start,
    below = low;
  while (cdf(high) < p && high < Number.MAX_VALUE / 4) {
    below = high;
    high = low + 2 * (high - low);
  }
  return risingRoot((x) => ({ value: cdf(x) - p, slope: density(x) }), below, high);
}
