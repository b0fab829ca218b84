import type { ScenarioData } from '../../scenario/data.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Finding } from '../answer/findings.js';
import { stopsIt } from '../constraint/sentence.js';
import { inWeeksJudged } from '../constraint/watch.js';
import { withShippable } from '../held/more-asked.js';
import type { RateJudged } from '../held/rate-held.js';
import { changedTo } from '../reliefs/changes.js';
import { hangsOn } from '../reliefs/values/hangs-on.js';
import { Replicator, type ReplicatorOptions } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { helpFor } from '../standstill/help.js';
import type { HelpResult } from '../standstill/results.js';
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
    const { replications, level, standstill } = results,
      found = await hangsOn(
        inWeeksJudged(plan, judged, { base, replications, level }),
        { scenario, data },
        replicator,
      );
    const help = standstill === null ? null : await helpFor(base, standstill, replications, replicator);
    const { warmUp, findings: ofWarmUp } = await judgedWarmUp(results, scenario, replicator);
    return {
      ...results,
      warmUp,
      standstill: standstill === null ? null : { ...standstill, help },
      findings: [...findings.map((finding) => withHelp(finding, help)), ...ofWarmUp],
      ...found,
      answer: withCause(answer, stopsIt(found.constraint), judged),
    };
  } finally {
    await replicator.close();
  }
}

const withHelp = (finding: Finding, help: HelpResult | null): Finding =>
  finding.kind === 'gridlock' && help !== null
    ? { ...finding, text: `${finding.text}. ${help.sentence}` }
    : finding;

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
