import type { Identity } from './journal.js';
import { Replicator, type Reading, type ReplicatorOptions, type Variant } from './replicator.js';

/**
 * A study whose replications are known before it begins: they may be run apart from each other, in shards on other machines, and be
 * summed up later with the same results to the last bit.
 */
export interface FixedDesign<Value, Found> {
  readonly identity: Identity;
  readonly variants: readonly Variant[];
  /** Of each variant. */
  readonly replications: number;
  readonly seed: string;
  readonly read: Reading<Value>;
  /** What was read, by variant, in replication order, as the study's results. */
  readonly summarise: (rows: Value[][]) => Found;
}

/** Shard `index`, from 1, of `of`: replications `index`, `index + of`, `index + 2 of` .. of each variant. */
export interface Shard { readonly index: number; readonly of: number }
export const WHOLE: Shard = { index: 1, of: 1 };

export const shardName = ({ index, of }: Shard): string => `shard ${index} of ${of}`;

/** Replications of a shard out of 1 to `replications`. */
export function replicationsOf({ index, of }: Shard, replications: number): number[] {
  return Array.from({ length: Math.max(0, Math.ceil((replications - index + 1) / of)) }, (_, i) => index + i * of);
}

/** Runs the replications of a shard: by variant, in replication order. */
export async function runDesign<Value>(
  { variants, replications, seed, read }: Pick<FixedDesign<Value, unknown>, 'variants' | 'replications' | 'seed' | 'read'>, options: Omit<ReplicatorOptions<Value>, 'seed' | 'read'>, { index, of } = WHOLE,
): Promise<Value[][]> {
  const jobs = variants.length * replicationsOf({ index, of }, replications).length;
  const replicator = new Replicator<Value>({ ...options, seed, read, workers: Math.min(options.workers, jobs) });
  try {
    return await replicator.run(variants, index, replications, of);
  } finally {
    await replicator.close();
  }
}
