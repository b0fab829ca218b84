import type { ScenarioData } from '../../scenario/data.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { constraint } from '../constraint/constraint.js';
import { stopsIt } from '../constraint/sentence.js';
import { inWeeksJudged, watch } from '../constraint/watch.js';
import { withShippable } from '../held/more-asked.js';
import type { RateJudged } from '../held/rate-held.js';
import { changedTo } from '../reliefs/changes.js';
import { valuesOf } from '../reliefs/values/values.js';
import { weakest } from '../reliefs/values/weakest.js';
import { Replicator, type ReplicatorOptions } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { judgedWarmUp } from './judged-warm-up.js';
import type { Results } from './results.js';
import type { Simulated } from './summary.js';

export interface WithConstraintOptions extends ReplicatorOptions {
  readonly scenario: Scenario;
  /** With it guesses and estimates are tried too, as far as `weakest` does. */
  readonly data?: ScenarioData | undefined;
  /** A new stage begins, in words. */
  readonly onStage?: ((text: string) => void) | undefined;
}

/**
 * The results with what stops the build, which guess it hangs on most and whether the warm-up is long enough,
 * which hang on them alone: after shards were merged it is the same as after one run.
 */
export async function withConstraint(
  { results, judged: first, answered }: Simulated,
  { scenario, data, onStage, ...options }: WithConstraintOptions,
): Promise<Results> {
  const base = changedTo(scenario),
    plan = planned(scenario, base.model);
  onStage?.('looking at the weeks judged and at what stops it');
  const replicator = new Replicator(options);
  try {
    const judged = await withShippable(first, plan, results.replications, replicator),
      { answer, findings } = answered(judged);
    const { replications, level } = results,
      watched = await watch(inWeeksJudged(plan, judged, { base, replications, level }), replicator),
      found = await constraint(watched, replicator);
    const { warmUp, findings: ofWarmUp } = await judgedWarmUp(results, scenario, replicator);
    return {
      ...results,
      warmUp,
      findings: [...findings, ...ofWarmUp],
      constraint: found,
      weakest: await weakest(watched, found, valuesOf({ scenario, data }), replicator),
      answer: withCause(answer, stopsIt(found), judged),
    };
  } finally {
    await replicator.close();
  }
}

/** In a gridlock, who waits for whom is the cause; the findings say it. */
function withCause(
  answer: Results['answer'],
  cause: string | null,
  { gridlocks }: RateJudged,
): Results['answer'] {
  return cause === null || gridlocks > 0
    ? answer
    : { ...answer, sentence: `${answer.sentence.slice(0, -1)}; ${cause}.` };
}
