import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { warmUpOf } from '../answer/warm-up.js';
import { runDesign } from '../run/fixed-design.js';
import { type ReplicatorOptions, whole } from '../run/replicator.js';
import { CLOSELY } from './design.js';

export interface FindWarmUpOptions extends Pick<ReplicatorOptions, 'workers' | 'signal'> {
  readonly scenario: Scenario;
  readonly seed: string;
}

/**
 * The warm-up of a steady-state run, minutes: where MSER-5 cuts the mean of the first replications, run
 * without one. 0 where a replication stopped early, which the run itself will tell.
 * @throws RangeError `programme: expected ..` for a length within which no cut can be trusted
 */
export async function findWarmUp({ scenario, seed, ...options }: FindWarmUpOptions): Promise<number> {
  const model = compile(withWarmUp(scenario, 0));
  const pilot = {
    variants: [{ key: 'warm-up', model, closely: CLOSELY, read: whole }],
    replications: CLOSELY,
    seed,
  };
  const observations: Observation[] = [];
  await runDesign(pilot, options, (observation) => observations.push(observation));
  const found = warmUpOf({ scenario, model }, observations);
  if (found === null) return 0;
  if (found.cutHours === null)
    throw new RangeError(
      'programme: expected a length within whose first half MSER-5 ends the start-up, got one ' +
        'within which it does not; raise the length, or give a warm up',
    );
  return found.cutHours * 60;
}

/** The scenario with a warm-up of so many minutes. */
export const withWarmUp = (scenario: Scenario, warmUpMin: number): Scenario => ({
  ...scenario,
  programme: { ...scenario.programme, warmUpMin },
});
