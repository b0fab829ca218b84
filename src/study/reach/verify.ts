import { withShippable } from '../held/more-asked.js';
import { judgeRate, type RateJudged, type Verdict } from '../held/rate-held.js';
import { defined } from '../lists.js';
import type { Changed } from '../reliefs/changes.js';
import { shippedADay } from '../reliefs/shipped.js';
import type { Replicator } from '../run/replicator.js';
import { type Planned, planned } from '../sample/planned.js';
import { boundsOf } from '../statistics/estimate.js';
import type { ReachGoal } from './results.js';
import { figuresOf, type PerDay, type Teller, type Told } from './told.js';

/** A build as it is judged at the end: by replications that had no part in choosing it. */
export interface Verified {
  readonly plan: Planned;
  /** Of its own weeks; `verdict` is that of the goal. */
  readonly judged: RateJudged;
  /** How units are counted in its weeks, also those of other builds. */
  readonly perDay: PerDay;
  readonly verdict: Verdict;
}

export interface VerifyAsked {
  readonly goal: ReachGoal;
  readonly replications: number;
  readonly level: number;
  /** No week that begins sooner is judged, minutes since the start. */
  readonly from: number | undefined;
}

/** A build that is not settled gets up to so many times the replications. */
export const MOST_TIMES = 4;

/**
 * Whether a build reaches the goal at the plan itself. Of a rate it is the one meaning of the word: enough
 * builds keep up, and they can ship as much in the long run.
 * @param replicator of the same replications, for what can be shipped
 */
export async function verified(
  changed: Changed,
  asked: VerifyAsked,
  teller: Teller,
  replicator: Replicator,
): Promise<Verified> {
  const { goal, replications, level, from } = asked,
    plan = planned(changed.scenario, changed.model);
  for (let times = 1; ; times *= 2) {
    const n = times * replications,
      told = defined((await teller.tell([changed], n))[0]),
      seen = judgeRate(plan, told.seen, level, from),
      judged = goal.kind === 'rate' ? await withShippable(seen, plan, n, replicator) : seen,
      perDay = shippedADay(plan, judged),
      verdict = verdictOf(asked, told, judged, perDay);
    if (verdict !== 'not settled' || times === MOST_TIMES) return { plan, judged, perDay, verdict };
  }
}

function verdictOf({ goal, level }: VerifyAsked, told: Told, judged: RateJudged, perDay: PerDay): Verdict {
  if (goal.kind === 'rate' && judged.verdict !== 'no rate asked') return judged.verdict;
  const { throughput, byDate } = figuresOf(told, perDay, goal, level),
    [{ low, high }, bar] =
      goal.kind === 'date' ? [defined(byDate ?? undefined), goal.sure] : [boundsOf(throughput), goal.perDay];
  return low >= bar ? 'holds' : high < bar ? 'falls short' : 'not settled';
}
