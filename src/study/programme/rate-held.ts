import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { type Counting, countingOf, plainCount, type ShippedBy } from '../loads/counting.js';
import { arithmeticOf, loadsOf, mayGoInLoads } from '../loads/loads.js';
import type { Planned } from '../sample/planned.js';
import { boundsOf, type Estimate, widened } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { amount } from '../statistics/skewed-interval.js';
import { judgedWindow, stretchOf, type Window } from './judged-window.js';
import { pooledLeadTime } from './lead-time.js';
import { allowedUnits, SHORTFALL_ALLOWED } from './shortfall.js';

export type Verdict = 'holds' | 'falls short' | 'not settled' | 'no rate asked';

/** What became of the highest rate that the plan asks for. */
export interface RateJudged {
  readonly verdict: Verdict;
  /** Units a working day; null without a rate. */
  readonly askedPerDay: number | null;
  readonly window: Window | null;
  /** Where it is counted over whole loads, its interval is wider by what these can still make of it. */
  readonly heldPerDay: Estimate | null;
  /** Mean share missing of the units asked in the window, negative where more were shipped. */
  readonly shortfall: Estimate | null;
  /** Share that may be missing. */
  readonly allowed: number;
  /** How it was counted; null without a window. */
  readonly counting: Counting | null;
  /** Replications that ended in gridlock, and those that did or missed more than is allowed. */
  readonly gridlocks: number;
  readonly notHeld: number;
  /** Units shipped per working day of the window in a replication; NaN without a window. */
  readonly heldIn: (seen: ShippedBy) => number;
  /** Lead time over all units shipped in all replications, minutes; NaN if there is none. */
  readonly leadMinutes: number;
}

/**
 * What must be kept of a replication to judge a rate: the time in which it is judged follows from all of
 * them.
 */
export type ToJudge = Pick<Observation, 'outcome' | 'shipped' | 'leadMean'> & ShippedBy;

/**
 * Holds if the whole interval of the mean shortfall is at or below what is allowed, falls short if it is
 * above. A single gridlock is a shortfall: a build that can come to a standstill does not hold a rate. Where
 * the window is too short for the loads of the build, it falls short only by more than they can upset the
 * count, and is not settled otherwise.
 */
export function judgeRate(plan: Planned, observations: readonly ToJudge[], level: number): RateJudged {
  const askedPerDay = askedRate(plan.scenario).highest,
    leadMinutes = pooledLeadTime(observations);
  const gridlocks = observations.filter(({ outcome }) => outcome === 'gridlock').length;
  const window = askedPerDay === null ? null : judgedWindow(plan, askedPerDay, leadMinutes),
    common = { askedPerDay, leadMinutes, window, gridlocks };
  if (askedPerDay === null || window === null)
    return {
      ...common,
      verdict: askedPerDay === null ? 'no rate asked' : gridlocks > 0 ? 'falls short' : 'not settled',
      shortfall: null,
      allowed: SHORTFALL_ALLOWED,
      counting: null,
      heldIn: () => NaN,
      heldPerDay: null,
      notHeld: gridlocks,
    };
  const counting = countingIn(plan, window, askedPerDay),
    allowed = allowedUnits(window.asked) / window.asked,
    missing = (each: ShippedBy): number => 1 - counting.shipped(each) / window.asked,
    heldIn = (each: ShippedBy): number => counting.shipped(each) / window.workingDays,
    shortfall = meanInterval(observations.map(missing), level);
  return {
    ...common,
    verdict: gridlocks > 0 ? 'falls short' : verdictOf(shortfall, allowed, counting.upset / window.asked),
    shortfall,
    allowed,
    counting,
    heldIn,
    heldPerDay: widened(amount(observations.map(heldIn), level), counting.upset / window.workingDays),
    notHeld: observations.filter((each) => each.outcome === 'gridlock' || missing(each) > allowed).length,
  };
}

/** How units shipped in a window are counted; known from the second time on that a study asks. */
function countingIn(plan: Planned, window: Window, perDay: number): Counting {
  if (!mayGoInLoads(plan.model)) return plainCount(window);
  const known = counted.get(plan.model);
  if (known !== undefined && known.window.first === window.first && known.window.last === window.last)
    return known.counting;
  const arithmetic = arithmeticOf(plan),
    loads = loadsOf(plan, perDay, stretchOf(plan, window), arithmetic),
    counting = countingOf(plan, window, loads, arithmetic);
  counted.set(plan.model, { window, counting });
  return counting;
}
const counted = new WeakMap<Model, { readonly window: Window; readonly counting: Counting }>();

/** @param upset share of what is asked by which loads can upset the count */
function verdictOf(shortfall: Estimate, allowed: number, upset: number): Verdict {
  const { low, high } = boundsOf(shortfall),
    isTooShort = upset > allowed;
  if (low > (isTooShort ? allowed + upset : allowed)) return 'falls short';
  return high <= allowed && !isTooShort ? 'holds' : 'not settled';
}
