import type { FixedDesign } from './fixed-design.js';
import { LEAST_FOR_PRECISION } from './precision.js';
import { Replicator, type ReplicatorOptions } from './replicator.js';
import { replicationsWanted, type Measured, type PrecisionAsked } from './summary-precision.js';

/**
 * Adds replications of the design's single variant until the measures are known so well or the limit is reached (Law 2015, sec. 9.4.1;
 * from memory). How many there are hangs on the results alone, so it is the same for any number of threads.
 * @param design its replications are those to begin with
 * @param measure sums up what there is so far
 */
export async function runUntilPrecise<Value>(
  { variants, replications, seed, read }: FixedDesign<Value, unknown>, asked: PrecisionAsked, measure: (values: Value[]) => Measured, options: Omit<ReplicatorOptions<Value>, 'seed' | 'read'>,
): Promise<Value[]> {
  const replicator = new Replicator<Value>({ ...options, seed, read }), values: Value[] = [];
  try {
    for (let next: number | null = Math.min(asked.most, Math.max(LEAST_FOR_PRECISION, replications)); next !== null;) {
      const [more] = await replicator.run(variants, values.length + 1, next);
      values.push(...more!);
      next = replicationsWanted(measure(values), values.length, asked);
    }
    return values;
  } finally {
    await replicator.close();
  }
}
