import { lstatSync } from 'node:fs';
import { type FixedDesign, runDesign, type Shard, shardName } from '../study/run/fixed-design.js';
import type { Journal } from '../study/run/journal.js';
import {
  aboutShard,
  readShard,
  type ShardAbout,
  ShardError,
  shardDifferences,
  writeShard,
} from '../study/run/shards.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { writing } from './files.js';
import type { Interrupt } from './interrupt.js';
import { withJournal } from './journal.js';
import { progressOf } from './progress.js';
import { UsageError } from './usage-error.js';

export interface ShardRun<Value> {
  readonly shard: Shard;
  readonly out: string;
  readonly workers: number;
  readonly quiet: boolean;
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
export async function runShard<Value>(
  { shard, out, workers, quiet, asked, design, stage }: ShardRun<Value>,
  interrupt: Interrupt,
): Promise<ExitCode> {
  const about = aboutShard(design.identity, asked, shard),
    name = shardName(shard),
    progress = await progressOf(quiet);
  if (isThere(out, about)) {
    progress.stage(`${out} is ${name} of this very study already; nothing is run`);
    return EXIT.done;
  }
  progress.stage(`${stage}, ${name}`);
  await withJournal(out, design.identity, progress, async (journal: Journal<Value>) => {
    // They stand in the journal as they end: nothing else need be kept of them.
    const running = runDesign(
      design,
      { workers, journal, signal: interrupt.signal, onReplication: progress.replications },
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
