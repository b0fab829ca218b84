/**
 * A mean over replications with its Student-t interval. `n` counts the replications that have a value; `low`
 * and `high` are null below two, and of none the mean is 0.
 */
export interface Estimate {
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
  readonly n: number;
}

/** The same of the middle and both bounds: scaled, moved or cut. */
export const mapped = <Of extends Pick<Estimate, 'mean' | 'low' | 'high'>>(
  estimate: Of,
  change: (value: number) => number,
): Of => ({
  ...estimate,
  mean: change(estimate.mean),
  low: estimate.low === null ? null : change(estimate.low),
  high: estimate.high === null ? null : change(estimate.high),
});

/** The opposite of a difference: the upper bound becomes the lower one. */
export const negated = <Of extends Pick<Estimate, 'mean' | 'low' | 'high'>>(estimate: Of): Of => ({
  ...estimate,
  mean: -estimate.mean,
  low: estimate.high === null ? null : -estimate.high,
  high: estimate.low === null ? null : -estimate.low,
});

/** With both bounds further out by what may be wrong with each value; what cannot be below 0 is not. */
export const widened = (estimate: Estimate, by: number): Estimate => ({
  ...estimate,
  low: estimate.low === null ? null : Math.max(0, estimate.low - by),
  high: estimate.high === null ? null : estimate.high + by,
});

/** The bounds of an interval; endless where there is none, so that nothing can be told by it. */
export const boundsOf = (estimate: Estimate | null): { readonly low: number; readonly high: number } => ({
  low: estimate?.low ?? -Infinity,
  high: estimate?.high ?? Infinity,
});
