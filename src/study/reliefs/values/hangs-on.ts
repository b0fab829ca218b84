import type { Scenario } from '../../../scenario/types/scenario.js';
import type { StudyOptions } from '../../asked.js';
import { constraint } from '../../constraint/constraint.js';
import type { ConstraintResult } from '../../constraint/results.js';
import { type ConstraintAsked, watch } from '../../constraint/watch.js';
import type { Replicator } from '../../run/replicator.js';
import { valuesOf } from './values.js';
import { type WeakestResult, weakest } from './weakest.js';

/**
 * What stops a build, and which guess what it ships hangs on most, in the weeks that are judged.
 * @param of the scenario as written, whose guesses are tried
 * @param atRate of a scenario with a guess at an end the one that is run
 */
export async function hangsOn(
  asked: ConstraintAsked,
  of: Pick<StudyOptions, 'scenario' | 'data'>,
  replicator: Replicator,
  atRate?: (scenario: Scenario) => Scenario,
): Promise<{ readonly constraint: ConstraintResult; readonly weakest: WeakestResult | null }> {
  const seen = await watch(asked, replicator),
    found = await constraint(seen, replicator);
  return { constraint: found, weakest: await weakest(seen, found, valuesOf(of), replicator, atRate) };
}
