import { boundsOf, type Estimate } from '../statistics/estimate.js';
import type { Bound } from './bound.js';
import type { BufferResults } from './results.js';

/** To nine digits. */
const ROUNDING = 1e-9;

type Verdict = BufferResults['answer']['verdict'];

/** @param over what the chosen layout ships more than the target asks @param isReached in the search */
export function verdictOf(
  goal: BufferResults['goal'],
  over: Estimate,
  isReached: boolean,
  bound: Bound | null,
): Verdict {
  if (goal.kind === 'budget') return 'found';
  const { low, high } = boundsOf(over);
  if (!isReached && bound !== null && bound.rate * (1 + ROUNDING) < goal.rate) return 'out of reach';
  return low >= 0 ? 'reached' : high < 0 ? 'not reached' : 'not settled';
}

/**
 * Replications after which an interval would probably lie on one side of a value: its width goes with one by
 * the root of their number. null: none would, or there is no interval.
 */
export function toSettle({ mean, low, high, n }: Estimate, at = 0): number | null {
  if (low === null || high === null || low > at || high < at || mean === at) return null;
  const times = (mean > at ? mean - low : high - mean) / Math.abs(mean - at),
    replications = n * times * times,
    // It is a guess itself: two digits, rounded up.
    step = Number(`1e${Math.max(0, Math.floor(Math.log10(replications)) - 1)}`);
  return Math.ceil(replications / step) * step;
}
