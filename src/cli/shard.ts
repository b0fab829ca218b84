import { existsSync, lstatSync } from 'node:fs';
import { type FixedDesign, runDesign, type Shard, shardName } from '../study/run/fixed-design.js';
import { type Journal, JournalError } from '../study/run/journal.js';
import { MissingShards } from '../study/run/merge.js';
import {
  aboutShard,
  readShard,
  type ShardAbout,
  ShardError,
  type ShardFolder,
  shardDifferences,
  writeShard,
} from '../study/run/shards.js';
import type { Values } from './arguments/option.js';
import type { WORKERS } from './arguments/workers.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { writing } from './files.js';
import { inFront } from './front/in-front.js';
import type { Interrupt } from './interrupt.js';
import { journalPath, withJournal } from './journal.js';
import { progressOf } from './output.js';
import { throughOf } from './through.js';
import { systemReason, UsageError } from './usage-error.js';

export interface ShardRun<Value> extends Values<typeof WORKERS> {
  readonly shard: Shard;
  readonly out: string;
  readonly quiet: boolean;
  readonly anyway: boolean;
  /** What the design is made from, as plain JSON. */
  readonly asked: object;
  readonly design: FixedDesign<Value, unknown>;
  /** What is done, for the first line of progress. */
  readonly stage: string;
}

/**
 * Runs one shard of a study into a folder of its own, for `merge`. Done already, or by a twin meanwhile, is
 * as good.
 */
export async function runShard<Value>(run: ShardRun<Value>, interrupt: Interrupt): Promise<ExitCode> {
  const { shard, out, workers, quiet, anyway, asked, design, stage } = run;
  const about = aboutShard(design.identity, asked, shard),
    name = shardName(shard),
    progress = progressOf(quiet, anyway);
  if (isThere(out, about)) {
    progress.stage(`${out} is ${name} of this very study already; nothing is run`);
    return EXIT.done;
  }
  progress.stage(`${stage}, ${name}`);
  const through = await throughOf(run);
  await withJournal(out, design.identity, progress, async (journal: Journal<Value>) => {
    // They stand in the journal as they end: nothing else need be kept of them.
    const running = runDesign(
      design,
      {
        workers,
        through,
        journal,
        signal: interrupt.signal,
        onReplication: progress.replications,
        meter: inFront().meter,
      },
      () => undefined,
      shard,
    );
    await interrupt.orStop(running).finally(progress.stop);
    try {
      writing(out, () => {
        writeShard(out, about, design, (key) => journal.get(key));
      });
    } catch (error) {
      if (isThere(out, about)) return;
      throw error instanceof ShardError
        ? new UsageError(error.message, 'give the same command again, one at a time into one folder')
        : error;
    }
  });
  progress.stage(`${name}: ${out}`);
  return EXIT.done;
}

/** Whether the shard stands there. A UsageError for anything else that does. */
function isThere(out: string, wanted: ShardAbout): boolean {
  if (writing(out, () => lstatSync(out, { throwIfNoEntry: false })) === undefined) return false;
  const hint = 'remove it, or choose another name with --out';
  try {
    const { about } = readShard(out),
      changed = shardDifferences(about, wanted);
    if (about.shard.index !== wanted.shard.index)
      changed.push(`shard was ${about.shard.index}, now it is ${wanted.shard.index}`);
    if (changed.length > 0)
      throw new UsageError(
        `expected ${out} to be free or this very shard, got another: ${changed.join('; ')}`,
        hint,
      );
    return true;
  } catch (error) {
    throw error instanceof ShardError ? new UsageError(error.message, hint) : error;
  }
}

/** Reads the folder of a finished shard. A UsageError for anything else. */
export function readFinished(path: string): ShardFolder {
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
    return readShard(path);
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
