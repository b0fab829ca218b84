import { defined } from '../lists.js';
import { type FixedDesign, replicationsOf, shardName } from './fixed-design.js';
import { differences } from './journal.js';
import { keyOf, lastOf } from './replicator.js';
import {
  openShardValues,
  ShardError,
  type ShardFolder,
  type ShardValues,
  shardDifferences,
} from './shards.js';

/** Shards that were looked for and not found. */
export class MissingShards extends Error {
  /** A line for each. */
  constructor(
    message: string,
    readonly lines: readonly string[],
  ) {
    super(message);
  }
}

/** Replications named of a shard that is missing. */
const MOST_NAMED = 3;

/** Throws a ShardError unless all folders are of one study; a shard may be there twice. */
export function checkTogether(folders: readonly ShardFolder[]): void {
  const [first] = folders;
  for (const other of folders) {
    if (first === undefined || other === first) continue;
    const changed = shardDifferences(first.about, other.about);
    if (changed.length > 0)
      throw new ShardError(
        `${other.path}: expected a shard of the study of ${first.path}, got one of another: ` +
          changed.join('; '),
      );
  }
}

/**
 * Sums up shards, one value in memory at a time, with the results of one run to the last bit.
 * @throws ShardError for shards of another study or version, MissingShards where some are not there
 */
export function mergeShards<Value, Found>(
  design: FixedDesign<Value, Found>,
  folders: readonly ShardFolder[],
): Found {
  checkTogether(folders);
  const {
      identity,
      shard: { of },
    } = defined(folders[0]).about,
    { variants, replications } = design;
  const changed = differences(identity, design.identity);
  if (changed.length > 0)
    throw new ShardError(
      `shards: expected those of this version and this scenario, got others: ${changed.join('; ')}`,
    );
  const byIndex = new Map(folders.map((folder) => [folder.about.shard.index, folder]));
  const missing = Array.from({ length: of }, (_, i) => ({ index: i + 1, of })).filter(
    ({ index }) => !byIndex.has(index),
  );
  if (missing.length > 0) {
    throw new MissingShards(
      `expected all ${of} shards of ${replications} replications, got ${byIndex.size}`,
      missing.map((shard) => {
        const numbers = replicationsOf(shard, replications),
          more = numbers.length - MOST_NAMED;
        return (
          `${shardName(shard)} is missing: replications ` +
          `${numbers.slice(0, MOST_NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`
        );
      }),
    );
  }
  const opened = new Map<number, ShardValues<Value>>();
  try {
    for (const [index, folder] of byIndex) opened.set(index, openShardValues(folder, design));
    const gathering = design.gather();
    for (const [index, variant] of variants.entries())
      for (let replication = 1; replication <= lastOf(variant, replications); replication++) {
        const shard = defined(opened.get(((replication - 1) % of) + 1));
        gathering.take(shard.get(keyOf(variant, replication)), index);
      }
    return gathering.found();
  } finally {
    for (const values of opened.values()) values.close();
  }
}
