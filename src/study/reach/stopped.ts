import type { Scenario } from '../../scenario/types/scenario.js';
import type { StudyOptions } from '../asked.js';
import { constraint } from '../constraint/constraint.js';
import type { ConstraintResult } from '../constraint/results.js';
import { type ConstraintAsked, inWeeksJudged, watch } from '../constraint/watch.js';
import { askedMore } from '../held/more-asked.js';
import { type Changed, changedTo } from '../reliefs/changes.js';
import { hangsOn } from '../reliefs/values/hangs-on.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Replicator } from '../run/replicator.js';
import type { ReachGoal } from './results.js';
import type { Verified } from './verify.js';

/** More is asked of a build that holds the rate: otherwise nothing that is tried could bring more. */
const TIMES = 1.1;

export interface StopsAsked {
  readonly goal: ReachGoal;
  readonly replications: number;
  readonly level: number;
  /** The scenario at the rate asked. */
  readonly atRate: (scenario: Scenario) => Scenario;
}

/** What is asked of a build, and how another one is made to be asked the same. */
interface Question extends ConstraintAsked {
  /** Units a working day; null: no rate is asked. */
  readonly perDay: number | null;
  readonly asking: (scenario: Scenario) => Scenario;
}

/**
 * What is asked of a build, to tell what stops it, in the weeks of the last one. One that holds the rate is
 * asked for a tenth more.
 */
export function questionOf(
  changed: Changed,
  { plan, judged }: Verified,
  { goal, replications, level, atRate }: StopsAsked,
  holds: boolean,
): Question {
  const { window, counting, askedPerDay } = judged,
    asked = (base: Changed): ConstraintAsked =>
      inWeeksJudged(plan, { ...judged, verdict: 'falls short' }, { base, replications, level });
  if (!holds || window === null || counting === null || goal.kind !== 'rate')
    return { ...asked(changed), perDay: askedPerDay, asking: atRate };
  const perDay = Number((TIMES * goal.perDay).toFixed(9)),
    asking = (scenario: Scenario): Scenario => askedMore(atRate(scenario), perDay, window);
  return {
    ...asked(changedTo(asking(changed.scenario))),
    shippedPerDay: () => (seen) => counting.shipped(seen) / window.workingDays,
    ...{ perDay, asking },
  };
}

/** What stops a build, by replications that had no part in choosing it. */
export async function stopsAt(question: Question, replicator: Replicator): Promise<Stopped> {
  const found = await constraint(await watch(question, replicator), replicator);
  return { ...found, askedPerDay: question.perDay };
}

/** The same, and which guess what it ships hangs on most. */
export async function hangsAt(
  question: Question,
  of: Pick<StudyOptions, 'scenario' | 'data'>,
  replicator: Replicator,
): Promise<{ readonly stopped: Stopped; readonly weakest: WeakestResult | null }> {
  const { constraint: found, weakest } = await hangsOn(question, of, replicator, question.asking);
  return { stopped: { ...found, askedPerDay: question.perDay }, weakest };
}

type Stopped = ConstraintResult & { readonly askedPerDay: number | null };
