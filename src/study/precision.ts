import type { Estimate } from './results.js';

/** Fewer replications say too little of the spread to stop on. */
export const LEAST_FOR_PRECISION = 10;

/**
 * Relative half-width of an interval; Infinity where there is none, or where the mean is 0 and the interval is not.
 */
export function relativeHalfWidth({ mean, low, high }: Pick<Estimate, 'mean' | 'low' | 'high'>): number {
  if (low === null || high === null) return Infinity;
  const half = (high - low) / 2;
  return half === 0 ? 0 : half / Math.abs(mean);
}

/**
 * Whether a mean is known to the relative error asked: half-width / |mean| <= g / (1 + g), which makes the error at most g
 * of the true mean (Law 2015, sec. 9.4.1; from memory), and no fewer than ten replications.
 * @param asked g, for example 0.01
 */
export function isPrecise(estimate: Estimate, asked: number): boolean {
  return estimate.n >= LEAST_FOR_PRECISION && relativeHalfWidth(estimate) <= asked / (1 + asked);
}

/** Replications that are likely to be needed, as the half-width falls with the root of their number; at least one more than there are. */
export function replicationsFor(estimate: Estimate, asked: number): number {
  const ratio = relativeHalfWidth(estimate) / (asked / (1 + asked));
  const needed = Number.isFinite(ratio) ? Math.ceil(estimate.n * ratio * ratio) : 2 * estimate.n;
  return Math.max(LEAST_FOR_PRECISION, estimate.n + 1, needed);
}
