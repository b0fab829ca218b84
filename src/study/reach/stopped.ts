import { constraint } from '../constraint/constraint.js';
import type { ConstraintResult } from '../constraint/results.js';
import { type ConstraintAsked, inWeeksJudged, watch } from '../constraint/watch.js';
import { unitsOut } from '../held/keep-up.js';
import { askedMore } from '../held/more-asked.js';
import { type Changed, changedTo } from '../reliefs/changes.js';
import type { Replicator } from '../run/replicator.js';
import type { ReachGoal } from './results.js';
import type { Verified } from './verify.js';

/** More is asked of a build that holds the rate: otherwise nothing that is tried could bring more. */
const TIMES = 1.1;

export interface StopsAsked {
  readonly goal: ReachGoal;
  readonly replications: number;
  readonly level: number;
}

/**
 * What is asked of a build, to tell what stops it, in the weeks of the last one. One that holds the rate is
 * asked for a tenth more.
 */
export function askedOf(
  changed: Changed,
  { plan, judged }: Verified,
  { goal, replications, level }: StopsAsked,
  holds: boolean,
): ConstraintAsked & { readonly perDay: number | null } {
  const { window, counting, askedPerDay } = judged,
    common = { replications, level };
  if (!holds || window === null || counting === null || goal.kind !== 'rate')
    return {
      ...inWeeksJudged(plan, { ...judged, verdict: 'falls short' }, { ...common, base: changed }),
      perDay: askedPerDay,
    };
  const perDay = Number((TIMES * goal.perDay).toFixed(9)),
    base = changedTo(askedMore(changed.scenario, perDay, window)),
    shipped = (of: Changed) => {
      const units = unitsOut(of.model, counting);
      return (seen: Parameters<typeof units>[0]) => units(seen) / window.workingDays;
    };
  return {
    ...inWeeksJudged(plan, { ...judged, verdict: 'falls short' }, { ...common, base }),
    shippedPerDay: shipped,
    perDay,
  };
}

/** What stops a build, by replications that had no part in choosing it. */
export async function stopsAt(
  { perDay, ...asked }: ReturnType<typeof askedOf>,
  replicator: Replicator,
): Promise<ConstraintResult & { readonly askedPerDay: number | null }> {
  return { ...(await constraint(await watch(asked, replicator), replicator)), askedPerDay: perDay };
}
