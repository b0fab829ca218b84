import { sumOf } from '../statistics/sums.js';
import type { Identity } from './journal.js';
import { lastOf, Replicator, type ReplicatorOptions, type Take, type Variant } from './replicator.js';

/**
 * What a study makes of its replications as they come: one at a time, by variant, in replication order, so
 * that they need not be kept.
 */
export interface Gathering<Value, Found> {
  /** `index`: that of its variant, in the design's variants. */
  readonly take: (value: Value, index: number) => unknown;
  /** Sums up what has come. */
  readonly found: () => Found;
}

/**
 * A study whose replications are known before it begins: they may be run apart from each other, in shards on
 * other machines, and be summed up later with the same results to the last bit.
 */
export interface FixedDesign<Value, Found> {
  readonly identity: Identity;
  readonly variants: readonly Variant<Value>[];
  /** Of each variant that has no `most` below it. */
  readonly replications: number;
  readonly seed: string;
  /** Begins to gather what was read into the study's results. */
  readonly gather: () => Gathering<Value, Found>;
}

/** Shard `index`, from 1, of `of`: replications `index`, `index + of`, `index + 2 of` .. of each variant. */
export interface Shard {
  readonly index: number;
  readonly of: number;
}
export const WHOLE: Shard = { index: 1, of: 1 };

export const shardName = ({ index, of }: Shard): string => `shard ${index} of ${of}`;

/** Replications of a shard out of 1 to `replications`. */
export function replicationsOf({ index, of }: Shard, replications: number): number[] {
  return Array.from(
    { length: Math.max(0, Math.ceil((replications - index + 1) / of)) },
    (_, i) => index + i * of,
  );
}

type RunOptions = Omit<ReplicatorOptions, 'seed'>;

/** Runs the replications of a shard and hands over what was read: by variant, in replication order. */
export async function runDesign<Value>(
  { variants, replications, seed }: Pick<FixedDesign<Value, unknown>, 'variants' | 'replications' | 'seed'>,
  options: RunOptions,
  take: Take<Value>,
  { index, of } = WHOLE,
): Promise<void> {
  const jobs = sumOf(
    variants,
    (variant) => replicationsOf({ index, of }, lastOf(variant, replications)).length,
  );
  const replicator = new Replicator({ ...options, seed, workers: Math.min(options.workers, jobs) });
  try {
    await replicator.each(variants, index, replications, of, take);
  } finally {
    await replicator.close();
  }
}

/** Runs the whole design: the study's results. */
export async function answerOf<Value, Found>(
  design: FixedDesign<Value, Found>,
  options: RunOptions,
): Promise<Found> {
  const gathering = design.gather();
  await runDesign(design, options, (value, index) => {
    gathering.take(value, index);
  });
  return gathering.found();
}
