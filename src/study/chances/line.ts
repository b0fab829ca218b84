import { mean, sumOf } from '../statistics/sums.js';

/** A line through points by least squares. */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  /** Standard error of the slope. */
  readonly slopeError: number;
  /** Sum of squared distances in y. */
  readonly squares: number;
  /** Of the distances, with n - 2 degrees of freedom. */
  readonly standardDeviation: number;
  readonly freedom: number;
}

/**
 * Ordinary least squares of y on x, by sums about the means (Draper & Smith 1998, Applied Regression
 * Analysis, ch. 1).
 * @param x at least three, not all the same
 */
export function leastSquares(x: readonly number[], y: readonly number[]): Line {
  const n = x.length;
  if (n < 3 || y.length !== n)
    throw new RangeError(`line: expected as many y as x and at least 3, got ${y.length} and ${n}`);
  const middle = mean(x),
    level = mean(y),
    pairs = x.map((value, i) => [value - middle, (y[i] ?? NaN) - level] as const),
    spread = sumOf(pairs, ([a]) => a * a);
  if (!(spread > 0)) throw new RangeError(`line: expected x that differ, got only ${middle}`);
  const slope = sumOf(pairs, ([a, b]) => a * b) / spread,
    squares = sumOf(pairs, ([a, b]) => (b - slope * a) * (b - slope * a)),
    freedom = n - 2,
    variance = squares / freedom;
  return {
    intercept: level - slope * middle,
    slope,
    interceptError: Math.sqrt(variance * (1 / n + (middle * middle) / spread)),
    slopeError: Math.sqrt(variance / spread),
    squares,
    standardDeviation: Math.sqrt(variance),
    freedom,
  };
}
