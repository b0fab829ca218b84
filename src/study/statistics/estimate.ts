/**
 * A mean over replications with its interval. `n` counts the replications that have a value, and of none the
 * mean is 0. `low` and `high` are null where there is no interval: below two replications; with `needs` where
 * they are too few to say; without it where all have the same value, which of events that were not seen may
 * still be up to `most`.
 */
export interface Estimate {
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
  readonly n: number;
  /** Replications that would probably do; only where there are too few for an interval. */
  readonly needs?: number;
  /** Upper bound of the mean, from one side at `level`; only of events of which none was seen. */
  readonly most?: number;
}

/** All replications, of which there are several, have the same value: no spread to make an interval of. */
export const isSame = ({ low, high, n, needs }: Omit<Estimate, 'mean' | 'level'>): boolean =>
  n > 1 && needs === undefined && low === high;

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
export function widened(estimate: Estimate, by: number): Estimate {
  if (by === 0 || (estimate.low === null && !isSame(estimate))) return estimate;
  const { low, high } = boundsOf(estimate);
  return { ...estimate, low: Math.max(0, low - by), high: high + by };
}

/**
 * The bounds of an interval, to tell something by; endless where there is none. Where all replications have
 * the same value it is both bounds, as far as they can tell: a build without chance has to be judged too.
 */
export const boundsOf = (estimate: Estimate | null): { readonly low: number; readonly high: number } =>
  estimate !== null && isSame(estimate)
    ? { low: estimate.mean, high: estimate.mean }
    : { low: estimate?.low ?? -Infinity, high: estimate?.high ?? Infinity };
