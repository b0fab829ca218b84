import { basename } from 'node:path';
import type { Observation } from '../measure/observation.js';
import { compile } from '../scenario/compile.js';
import type { Scenario } from '../scenario/scenario.js';
import { programmeClock } from '../scenario/compile-clock.js';
import { journey as journeyOf, type JourneyAsked } from './journey.js';
import type { Results } from './results.js';
import { summarise } from './summary.js';
import { Replicator } from './replicator.js';

export interface SimulateOptions {
  readonly scenario: Scenario;
  /** Name of the scenario's file; folders are left out of the results. */
  readonly file: string;
  /** At least 1; intervals need 2. */
  readonly replications: number;
  readonly seed: string;
  /** Worker threads; 1 runs all in this thread. Results do not depend on it. */
  readonly workers: number;
  /** Confidence of the intervals, default 0.95. */
  readonly level?: number | undefined;
  /** The unit whose way is told, which takes one replication more; none where left out. */
  readonly journey?: JourneyAsked | undefined;
  /** Called after each replication. */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}

/**
 * Runs a scenario many times over and sums it up. Same scenario, seed and replications: same results, to the last bit.
 * Rejects with a RangeError for options or a programme that cannot be run, and with the signal's reason when it is aborted.
 */
export async function simulateStudy({ scenario, file, replications, seed, workers, level = 0.95, journey, onReplication, signal }: SimulateOptions): Promise<Results> {
  wholeNumber('replications', replications);
  wholeNumber('workers', workers);
  if (!(level > 0 && level < 1)) throw new RangeError(`level: expected a confidence above 0 and below 1, saw ${level}; give for example 0.95`);
  const model = compile(scenario);
  const replicator = new Replicator<Observation>({ seed, workers: Math.min(workers, replications), read: (observation) => observation, onReplication, signal });
  try {
    const [observations] = await replicator.run([{ key: 'base', model }], 1, replications) as [Observation[]];
    const clock = programmeClock(scenario), results = summarise({ scenario, model, clock, observations, file: basename(file), seed, level });
    return journey === undefined ? results : { ...results, journey: journeyOf(model, clock, seed, observations[0]!, journey) };
  } finally {
    await replicator.close();
  }
}

function wholeNumber(what: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 1)) throw new RangeError(`${what}: expected a whole number of at least 1, saw ${value}; give one`);
}
