import { existsSync } from 'node:fs';
import { JournalError } from '../study/run/journal.js';
import { MissingShards } from '../study/run/merge.js';
import { readShard as readFolder, ShardError, type ShardFolder } from '../study/run/shards.js';
import { journalPath } from './journal.js';
import { systemReason, UsageError } from './usage-error.js';

/** Reads the folder of a finished shard. A UsageError for anything else. */
export function readShard(path: string): ShardFolder {
  const again = 'give its command again, it goes on from there';
  if (path.endsWith('.journal'))
    throw new UsageError(
      `expected the folder of a finished shard, got ${path}, the journal of one that was cut off`,
      again,
    );
  if (!existsSync(path)) {
    throw existsSync(journalPath(path))
      ? new UsageError(
          `expected ${path} to be the folder of a finished shard, got one that was cut off`,
          again,
        )
      : new UsageError(
          `expected the folder of a finished shard, got no such folder: ${path}`,
          'folders are written by --shard I/N --out DIR',
        );
  }
  try {
    return readFolder(path);
  } catch (error) {
    const reason = systemReason(error);
    throw reason === undefined ? error : new UsageError(`expected to be able to read ${path}, got ${reason}`);
  }
}

/** Does what reads finished shards; what is wrong with them becomes a UsageError. */
export async function usingShards<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof MissingShards)
      throw new UsageError(error.message, 'run them, or name their folders too', error.lines);
    throw error instanceof ShardError || error instanceof JournalError
      ? new UsageError(error.message, 'leave it out, or run the shard again into another folder')
      : error;
  }
}
