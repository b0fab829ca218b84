import { existsSync } from 'node:fs';
import { compareDesign, type CompareAsked } from '../../study/compare/design.js';
import { JournalError } from '../../study/run/journal.js';
import { checkTogether, mergeShards, MissingShards } from '../../study/run/merge.js';
import { readShard, ShardError, type ShardFolder } from '../../study/run/shards.js';
import { simulateDesign, type SimulateAsked } from '../../study/simulate/design.js';
import { COMPARE, comparison } from './compare.js';
import type { ExitCode } from '../exit-code.js';
import { listenForInterrupt, type Interrupt } from '../interrupt.js';
import { say } from '../output.js';
import type { MergeRequest } from '../arguments/request.js';
import { runStudy } from '../run-study.js';
import { checkJourney, journeyAsked, SIMULATE } from './simulate.js';
import { journalPath } from '../journal.js';
import { systemReason, UsageError } from '../usage-error.js';

/** Studies that can be merged, by name: from what shards were asked to an answer. */
const STUDIES: Readonly<
  Record<
    string,
    (
      request: MergeRequest,
      folders: readonly ShardFolder[],
      stage: string,
      interrupt: Interrupt,
    ) => Promise<ExitCode>
  >
> = {
  simulate: async (request, folders, stage, interrupt) => {
    const asked = folders[0]!.about.asked as unknown as SimulateAsked,
      design = simulateDesign(asked, journeyAsked(request));
    checkJourney(request.journey, asked.scenario, design.variants[0]!.model);
    return runStudy(request, interrupt, {
      ...SIMULATE,
      stage: `${stage} of ${asked.file}, ${asked.replications} replications, seed ${asked.seed}`,
      run: async () => mergeShards(design, folders),
    });
  },
  compare: async (request, folders, stage, interrupt) => {
    if (request.journey !== undefined)
      throw new UsageError(
        '--journey: expected shards of simulate, got those of compare, which tells of no single unit',
        'leave --journey out',
      );
    const asked = folders[0]!.about.asked as unknown as CompareAsked;
    return runStudy(request, interrupt, {
      ...COMPARE,
      stage: `${stage}, ${comparison(asked)}`,
      run: async () => mergeShards(compareDesign(asked), folders),
    });
  },
};

/** `rateproof merge`: shards to what one run would have given. */
export async function merge(request: MergeRequest): Promise<ExitCode> {
  const interrupt = listenForInterrupt();
  try {
    const folders = request.folders.map(read),
      { study = '' } = folders[0]!.about.identity,
      answer = Object.hasOwn(STUDIES, study) ? STUDIES[study] : undefined;
    if (answer === undefined)
      throw new UsageError(
        `expected shards of ${Object.keys(STUDIES).join(', ')}, got those of ${JSON.stringify(study)}`,
        'merge them with the version that made them',
      );
    checkTogether(folders);
    const indices = new Set(folders.map(({ about }) => about.shard.index)),
      twice = folders.length - indices.size;
    if (twice > 0 && !request.quiet)
      say(
        `${twice} ${twice === 1 ? 'folder holds a shard' : 'folders hold shards'} that another holds ` +
          'too, which changes nothing',
      );
    return await answer(
      request,
      folders,
      `merging ${indices.size} ${indices.size === 1 ? 'shard' : 'shards'}`,
      interrupt,
    );
  } catch (error) {
    if (error instanceof MissingShards)
      throw new UsageError(error.message, 'run them, or name their folders too', error.lines);
    throw error instanceof ShardError || error instanceof JournalError
      ? new UsageError(error.message, 'leave it out, or run the shard again into another folder')
      : error;
  }
}

function read(path: string): ShardFolder {
  const again = 'give its command again, it goes on from there';
  if (path.endsWith('.journal'))
    throw new UsageError(
      `expected the folder of a finished shard, got ${path}, the journal of one that was cut off`,
      again,
    );
  if (!existsSync(path)) {
    throw existsSync(journalPath(path))
      ? new UsageError(`expected ${path} to be the folder of a finished shard, but it was cut off`, again)
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
