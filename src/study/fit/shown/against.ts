import { familyLevel } from '../../statistics/difference.js';
import { type Estimate, mapped } from '../../statistics/estimate.js';
import { amount } from '../../statistics/skewed-interval.js';

/** Whether clocked times surely take longer or shorter than the scenario has it. */
export interface AgainstScenario {
  /** Mean minutes in the scenario, of units with the options of those in the table. */
  readonly now: number;
  /** Of the clocked mean, in the same minutes; so wide that those of all steps hold together with 95 %. */
  readonly interval: Estimate;
  readonly differs: 'longer' | 'shorter' | null;
}

export const LEVEL = 0.95;
/** Of fewer times no interval is sure enough to claim a difference by. */
const FEWEST = 10;

/** Mean of times with the interval of `skewedInterval`; without one where too few of them differ. */
export function clockedMean(times: readonly number[], level: number): Estimate {
  const { mean, low, high, n } = amount(times, level);
  return { mean, low, high, level, n };
}

/**
 * Clocked means against those of the scenario, in the same order; null where there is nothing to compare or
 * too few times.
 * @param steps times without what options do to them, `now` so too, and the mean of the units in the table
 *   over that of these times
 */
export function againstScenario(
  steps: readonly { readonly times: readonly number[]; readonly now: number | null; readonly mix: number }[],
): (AgainstScenario | null)[] {
  const isCompared = ({ times, now }: (typeof steps)[number]): boolean =>
      now !== null && times.length >= FEWEST,
    level = familyLevel(LEVEL, steps.filter(isCompared).length);
  return steps.map((step) => {
    const { now, times, mix } = step;
    if (now === null || !isCompared(step)) return null;
    const interval = clockedMean(times, level),
      { low, high } = interval,
      asMixed = (minutes: number): number => mix * minutes;
    return {
      now: asMixed(now),
      interval: mapped(interval, asMixed),
      differs: low !== null && low > now ? 'longer' : high !== null && high < now ? 'shorter' : null,
    };
  });
}
