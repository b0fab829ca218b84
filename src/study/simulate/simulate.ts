import {
  type Measured,
  type PrecisionAsked,
  precisionFindings,
  precisionOf,
  UntilPrecise,
} from '../answer/precision.js';
import { LEAST_FOR_PRECISION } from '../answer/precision-measures.js';
import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import type { JourneyAsked } from '../programme/journey.js';
import { answerOf, type FixedDesign } from '../run/fixed-design.js';
import { Replicator, type ReplicatorOptions, type Take } from '../run/replicator.js';
import { simulateDesign } from './design.js';
import type { Results } from './results.js';
import { type WithConstraintOptions, withConstraint } from './with-constraint.js';

export interface SimulateOptions extends StudyOptions, Pick<WithConstraintOptions, 'onStage' | 'data'> {
  /** At least 1; intervals need 2. */
  readonly replications: number;
  /** The unit whose way is told, which takes one replication more; none where left out. */
  readonly journey?: JourneyAsked | undefined;
  /** Replications are added until the measures are known so well; none where left out. */
  readonly precision?: PrecisionAsked | undefined;
  /** Measured inputs are drawn anew for every two replications; not together with `precision`. */
  readonly inputs?: 'uncertain' | undefined;
}

/**
 * Runs a scenario many times over and sums it up. Same scenario, seed and replications: same results, to the
 * last bit. Rejects with a RangeError for options or a programme that cannot be run, and with the signal's
 * reason when it is aborted.
 */
export async function simulateStudy(options: SimulateOptions): Promise<Results> {
  const { replications, level = LEVEL, journey, precision } = options;
  wholeNumber('replications', replications);
  wholeNumber('workers', options.workers);
  if (!(level > 0 && level < 1))
    throw new RangeError(
      `level: expected a confidence above 0 and below 1, got ${level}; give for example 0.95`,
    );
  const design = simulateDesign({ ...options, level }, journey);
  if (precision === undefined) return withConstraint(await answerOf(design, options), options);
  const gathering = design.gather(precision.of),
    done = await runUntilPrecise(design, precision, gathering, options);
  const results = await withConstraint(gathering.found(), options),
    reached = precisionOf(gathering.measured, done, precision);
  return { ...results, precision: reached, findings: [...results.findings, ...precisionFindings(reached)] };
}

/**
 * Adds replications of the design's variants, of each up to its `most`, until the measures are known so well
 * or the limit is reached (Law 2015, sec. 9.4.1; from memory). How many there are hangs on the results alone,
 * so it is the same for any number of threads.
 * @param design its replications are those to begin with
 * @param gathering is given each one, in replication order, and tells of those that it has
 * @returns how many there are in the end
 */
export async function runUntilPrecise<Value>(
  { variants, replications, seed }: FixedDesign<Value, unknown>,
  asked: PrecisionAsked,
  { take, measured }: { readonly take: Take<Value>; readonly measured: Measured },
  options: Omit<ReplicatorOptions, 'seed'>,
): Promise<number> {
  const replicator = new Replicator({ ...options, seed });
  const until = new UntilPrecise(measured, asked);
  let done = 0;
  try {
    let next: number | null = Math.min(asked.most, Math.max(LEAST_FOR_PRECISION, replications));
    while (next !== null) {
      await replicator.each(variants, done + 1, next, 1, take);
      done = next;
      next = until.next(done);
    }
    return done;
  } finally {
    await replicator.close();
  }
}
