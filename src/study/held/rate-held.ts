import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { type Counting, countingOf, plainCount, type ShippedBy } from '../loads/counting.js';
import { arithmeticOf, loadsOf, mayGoInLoads } from '../loads/loads.js';
import { judgedWindow, stretchOf, type Window } from '../programme/judged-window.js';
import { pooledLeadTime } from '../programme/lead-time.js';
import type { Planned } from '../sample/planned.js';
import { type Estimate, widened } from '../statistics/estimate.js';
import { proportion } from '../statistics/proportion.js';
import { amount } from '../statistics/skewed-interval.js';
import { type Holding, holdingOf, SHIPS_ENOUGH } from './holding.js';
import { keptUpBy } from './keep-up.js';
import { USUAL_SURE } from './sure.js';

export type Verdict = 'holds' | 'falls short' | 'not settled' | 'no rate asked';

/** What became of the highest rate that the plan asks for. */
export interface RateJudged {
  readonly verdict: Verdict;
  /** Units a working day; null without a rate. */
  readonly askedPerDay: number | null;
  readonly window: Window | null;
  /** Where it is counted over whole loads, its interval is wider by what these can still make of it. */
  readonly heldPerDay: Estimate | null;
  /** Whether builds keep up, and what they can ship; null without a window. */
  readonly holding: Holding | null;
  /** How it was counted; null without a window. */
  readonly counting: Counting | null;
  /** Replications that ended in gridlock. */
  readonly gridlocks: number;
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
 * Whether the rate holds as far as these replications tell: what can be shipped in the long run is looked at
 * apart (`withShippable`), and taken as enough here. Without a window it falls short only if surely too few
 * builds go on to the end.
 * @param from no week that begins sooner is judged, minutes since the start
 */
export function judgeRate(
  plan: Planned,
  observations: readonly ToJudge[],
  level: number,
  from?: number,
): RateJudged {
  const askedPerDay = askedRate(plan.scenario).highest,
    leadMinutes = pooledLeadTime(observations);
  const gridlocks = observations.filter(({ outcome }) => outcome === 'gridlock').length;
  const window = askedPerDay === null ? null : judgedWindow(plan, askedPerDay, leadMinutes, from),
    common = { askedPerDay, leadMinutes, window, gridlocks };
  if (askedPerDay === null || window === null)
    return {
      ...common,
      verdict: askedPerDay === null ? 'no rate asked' : withoutWindow(observations.length, gridlocks, level),
      holding: null,
      counting: null,
      heldIn: () => NaN,
      heldPerDay: null,
    };
  const counting = countingIn(plan, window, askedPerDay),
    heldIn = (each: ShippedBy): number => counting.shipped(each) / window.workingDays,
    holding = {
      ...keptUpBy(observations, { asked: window.asked, counting }, USUAL_SURE, level),
      isWhole: counting.isWhole,
      canShip: null,
    };
  return {
    ...common,
    verdict: verdictOf({ ...holding, canShip: SHIPS_ENOUGH }),
    holding,
    counting,
    heldIn,
    heldPerDay: widened(amount(observations.map(heldIn), level), counting.upset / window.workingDays),
  };
}

/** In the words of a plan that is kept to or not. */
export function verdictOf(holding: Holding): Verdict {
  const known = holdingOf(holding);
  return known === 'does not hold' ? 'falls short' : known;
}

const withoutWindow = (builds: number, gridlocks: number, level: number): Verdict =>
  proportion(builds - gridlocks, builds, level).high < USUAL_SURE ? 'falls short' : 'not settled';

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
