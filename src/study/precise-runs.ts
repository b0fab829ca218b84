import type { FixedDesign } from './fixed-design.js';
import { LEAST_FOR_PRECISION } from './precision.js';
import { Replicator, type ReplicatorOptions, type Take } from './replicator.js';
import { replicationsWanted, type Measured, type PrecisionAsked } from './summary-precision.js';

/**
 * Adds replications of the design's single variant until the measures are known so well or the limit is reached (Law 2015, sec. 9.4.1;
 * from memory). How many there are hangs on the results alone, so it is the same for any number of threads.
 * @param design its replications are those to begin with
 * @param gathering is given each one, in replication order, and tells of those that it has
 * @returns how many there are in the end
 */
export async function runUntilPrecise<Value>(
  { variants, replications, seed, read }: FixedDesign<Value, unknown>,
  asked: PrecisionAsked,
  { take, measured }: { readonly take: Take<Value>; readonly measured: Measured },
  options: Omit<ReplicatorOptions<Value>, 'seed' | 'read'>,
): Promise<number> {
  const replicator = new Replicator<Value>({ ...options, seed, read });
  let done = 0;
  try {
    for (
      let next: number | null = Math.min(asked.most, Math.max(LEAST_FOR_PRECISION, replications));
      next !== null;
    ) {
      await replicator.each(variants, done + 1, next, 1, take);
      done = next;
      next = replicationsWanted(measured, done, asked);
    }
    return done;
  } finally {
    await replicator.close();
  }
}
