import type { Observation } from '../measure/observation.js';
import type { Scenario } from '../scenario/scenario.js';
import { answerOf } from './fixed-design.js';
import type { Journal } from './journal.js';
import type { JourneyAsked } from './journey.js';
import { runUntilPrecise } from './precise-runs.js';
import type { Results } from './results.js';
import { simulateDesign } from './simulate-design.js';
import { precisionFindings, precisionOf, type PrecisionAsked } from './summary-precision.js';

/** Confidence of the intervals, if no other is asked for. */
export const LEVEL = 0.95;

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
  /** Replications are added until the measures are known so well; none where left out. */
  readonly precision?: PrecisionAsked | undefined;
  /** Finished replications of an earlier run, and where new ones are written. */
  readonly journal?: Journal<Observation> | undefined;
  /** Called after each replication. */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}

/**
 * Runs a scenario many times over and sums it up. Same scenario, seed and replications: same results, to the last bit.
 * Rejects with a RangeError for options or a programme that cannot be run, and with the signal's reason when it is aborted.
 */
export async function simulateStudy({
  scenario,
  file,
  replications,
  seed,
  workers,
  level = LEVEL,
  journey,
  precision,
  journal,
  onReplication,
  signal,
}: SimulateOptions): Promise<Results> {
  wholeNumber('replications', replications);
  wholeNumber('workers', workers);
  if (!(level > 0 && level < 1))
    throw new RangeError(
      `level: expected a confidence above 0 and below 1, saw ${level}; give for example 0.95`,
    );
  const design = simulateDesign({ scenario, file, replications, seed, level }, journey),
    options = { workers, journal, onReplication, signal };
  if (precision === undefined) return answerOf(design, options);
  const gathering = design.gather(precision.of),
    done = await runUntilPrecise(design, precision, gathering, options);
  const results = gathering.found(),
    reached = precisionOf(gathering.measured, done, precision);
  return { ...results, precision: reached, findings: [...results.findings, ...precisionFindings(reached)] };
}

function wholeNumber(what: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 1))
    throw new RangeError(`${what}: expected a whole number of at least 1, saw ${value}; give one`);
}
