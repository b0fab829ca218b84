import type { Observation } from '../../measure/observe.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Planned } from '../sample/planned.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import { amount, meanInterval } from '../statistics/interval.js';
import { sum } from '../statistics/sums.js';
import { judgedWindow, type Window } from './judged-window.js';
import { pooledLeadTime } from './lead-time.js';

/**
 * A rate counts as held when no more than this share of the units asked is missing. Our own convention: at 4
 * a day it is one unit in twelve working days, which a plan makes good within its usual slack; there is no
 * standard for it.
 */
export const SHORTFALL_ALLOWED = 0.02;

export type Verdict = 'holds' | 'falls short' | 'not settled' | 'no rate asked';

/** What became of the highest rate that the plan asks for. */
export interface RateJudged {
  readonly verdict: Verdict;
  /** Units a working day; null without a rate. */
  readonly askedPerDay: number | null;
  readonly window: Window | null;
  readonly heldPerDay: Estimate | null;
  /** Mean share missing of the units asked in the window, negative where more were shipped. */
  readonly shortfall: Estimate | null;
  /** Replications that ended in gridlock, and those that did or missed more than is allowed. */
  readonly gridlocks: number;
  readonly notHeld: number;
  /** Units shipped per working day of the window in a replication; NaN without a window. */
  readonly heldIn: (seen: Pick<Observation, 'shippedIn'>) => number;
  /** Lead time over all units shipped in all replications, minutes; NaN if there is none. */
  readonly leadMinutes: number;
}

/**
 * What must be kept of a replication to judge a rate: the time in which it is judged follows from all of
 * them.
 */
export type ToJudge = Pick<Observation, 'outcome' | 'shipped' | 'leadMean' | 'shippedIn'>;

/**
 * Holds if the whole interval of the mean shortfall is at or below what is allowed, falls short if it is
 * above. A single gridlock is a shortfall: a build that can come to a standstill does not hold a rate.
 */
export function judgeRate(plan: Planned, observations: readonly ToJudge[], level: number): RateJudged {
  const askedPerDay = askedRate(plan.scenario).highest,
    leadMinutes = pooledLeadTime(observations);
  const gridlocks = observations.filter(({ outcome }) => outcome === 'gridlock').length;
  const window = askedPerDay === null ? null : judgedWindow(plan, askedPerDay, leadMinutes);
  const shippedIn = (each: Pick<ToJudge, 'shippedIn'>): number =>
    window === null ? NaN : sum(each.shippedIn.subarray(window.first, window.last + 1));
  const missing = (each: ToJudge): number => (window === null ? NaN : 1 - shippedIn(each) / window.asked);
  const heldIn = (each: Pick<ToJudge, 'shippedIn'>): number =>
    window === null ? NaN : shippedIn(each) / window.workingDays;
  const shortfall = window === null ? null : meanInterval(observations.map(missing), level);
  return {
    verdict: askedPerDay === null ? 'no rate asked' : gridlocks > 0 ? 'falls short' : verdictOf(shortfall),
    askedPerDay,
    window,
    shortfall,
    gridlocks,
    heldIn,
    leadMinutes,
    heldPerDay: window === null ? null : amount(observations.map(heldIn), level),
    notHeld: observations.filter((each) => each.outcome === 'gridlock' || missing(each) > SHORTFALL_ALLOWED)
      .length,
  };
}

function verdictOf(shortfall: Estimate | null): Verdict {
  const { low, high } = boundsOf(shortfall);
  return high <= SHORTFALL_ALLOWED ? 'holds' : low > SHORTFALL_ALLOWED ? 'falls short' : 'not settled';
}
