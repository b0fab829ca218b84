import { BIN_COUNT, binEdge } from '../flow/accounts/bins.js';

/**
 * Quantile of durations counted in bins, minutes: linear within the bin, clamped to the least and greatest
 * seen. A bin is 0.27 % wide, so is the error. NaN when nothing was counted.
 * @param p 0..1
 */
export function binQuantile(bins: ArrayLike<number>, p: number, least: number, greatest: number): number {
  let total = 0;
  for (let bin = 0; bin < BIN_COUNT; bin++) total += bins[bin];
  if (total === 0) return NaN;
  const rank = p * total;
  let below = 0;
  for (let bin = 0; bin < BIN_COUNT; bin++) {
    const count = bins[bin];
    if (count === 0) continue;
    if (below + count >= rank) {
      const low = binEdge(bin),
        high = binEdge(bin + 1),
        value = low + ((rank - below) / count) * (high - low);
      return Math.min(greatest, Math.max(least, value));
    }
    below += count;
  }
  return greatest;
}
