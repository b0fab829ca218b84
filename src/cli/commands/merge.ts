import type { CompareAsked } from '../../study/compare/design.js';
import type { FactorsAsked } from '../../study/factors/results.js';
import { count } from '../../study/format.js';
import type { ShardFolder } from '../../study/run/shards.js';
import type { SimulateAsked } from '../../study/simulate/design.js';
import { command } from '../arguments/command.js';
import { type Values, words } from '../arguments/option.js';
import { ANSWER, JOURNEY, RUN } from '../arguments/options.js';
import { WORKERS } from '../arguments/workers.js';
import type { ExitCode } from '../exit-code.js';
import { type Interrupt, listenForInterrupt } from '../interrupt.js';
import { say } from '../output.js';
import type { How } from '../run-study.js';
import { UsageError } from '../usage-error.js';
import { compareShown, comparison } from './compare.js';
import { experiment, factorsShown } from './factors.js';
import { checkJourney, journeyAsked, simulateShown } from './simulate.js';

const OPTIONS = { ...ANSWER, ...WORKERS, anyway: RUN.anyway, journey: JOURNEY };

export const merge = command({
  name: 'merge',
  words: { folders: words('DIR', 'folder DIR of a finished shard', 'folders of finished shards') },
  summary: 'finished shards of simulate, compare or factors, combined into the answer of one run',
  about: 'combines the shards of a simulate, compare or factors into the same files that a single run writes',
  examples: [
    'rateproof simulate line.yaml --replications 100 --shard 1/4 --out out/shard-1   (and so on, anywhere)',
    'rateproof merge out/shard-1 out/shard-2 out/shard-3 out/shard-4 --out out/line',
  ],
  options: OPTIONS,
  request: ({ folders: [first, ...others], ...given }) => {
    if (first === undefined)
      throw new UsageError(
        'expected folders DIR of finished shards, got none',
        'for example rateproof merge out/shard-1 out/shard-2 --out out/line',
      );
    return { ...given, folders: [first, ...others] as const };
  },
  run: async (request) => {
    const interrupt = listenForInterrupt();
    const { readFinished, usingShards } = await import('../shard.js');
    return usingShards(async () => {
      const [first, ...others] = request.folders,
        folders: Folders = [readFinished(first), ...others.map(readFinished)];
      const { study = '' } = folders[0].about.identity,
        answer = STUDIES.get(study);
      if (answer === undefined)
        throw new UsageError(
          `expected shards of ${[...STUDIES.keys()].join(', ')}, got those of ${JSON.stringify(study)}`,
          'merge them with the version that made them',
        );
      const { checkTogether } = await import('../../study/run/merge.js');
      checkTogether(folders);
      const count = new Set(folders.map(({ about }) => about.shard.index)).size,
        twice = folders.length - count;
      if (twice > 0 && !request.quiet)
        say(
          `${twice} ${twice === 1 ? 'folder holds a shard' : 'folders hold shards'} ` +
            'that another holds too, which changes nothing',
        );
      return answer(request, folders, `merging ${count} ${count === 1 ? 'shard' : 'shards'}`, interrupt);
    });
  },
});

type Folders = readonly [ShardFolder, ...ShardFolder[]];
type Answer = (
  request: Values<typeof OPTIONS>,
  folders: Folders,
  stage: string,
  interrupt: Interrupt,
) => Promise<ExitCode>;

/** Studies that can be merged, by name: from what shards were asked to an answer. */
const STUDIES: ReadonlyMap<string, Answer> = new Map<string, Answer>([
  [
    'simulate',
    async (request, folders, stage, interrupt) => {
      const { simulateDesign } = await import('../../study/simulate/design.js');
      const { mergeShards } = await import('../../study/run/merge.js');
      const { withConstraint } = await import('../../study/simulate/with-constraint.js');
      const { runStudy } = await import('../run-study.js');
      const { compile } = await import('../../scenario/compile.js');
      const asked = folders[0].about.asked as unknown as SimulateAsked,
        design = simulateDesign(asked, journeyAsked(request));
      for (const { model } of design.variants) await checkJourney(request.journey, asked.scenario, model);
      return runStudy(request, interrupt, {
        ...simulateShown(asked, compile(asked.scenario)),
        stage: `${stage} of ${asked.file}, ${count(asked.replications, 'replication')}, seed ${asked.seed}`,
        run: (how) =>
          withConstraint(mergeShards(design, folders), {
            ...afterwards(how),
            scenario: asked.scenario,
            data: asked.data,
            seed: asked.seed,
          }),
      });
    },
  ],
  [
    'compare',
    async (request, folders, stage, interrupt) => {
      checkNoJourney(request, 'compare');
      const { compareDesign } = await import('../../study/compare/design.js');
      const { withConstraint } = await import('../../study/compare/with-constraint.js');
      const { mergeShards } = await import('../../study/run/merge.js');
      const { runStudy } = await import('../run-study.js');
      const asked = folders[0].about.asked as unknown as CompareAsked;
      return runStudy(request, interrupt, {
        ...compareShown(asked),
        stage: `${stage}, ${comparison(asked)}`,
        run: (how) => withConstraint(mergeShards(compareDesign(asked), folders), asked, afterwards(how)),
      });
    },
  ],
  [
    'factors',
    async (request, folders, stage, interrupt) => {
      checkNoJourney(request, 'factors');
      const { factorsDesign } = await import('../../study/factors/design.js');
      const { withConstraint } = await import('../../study/factors/with-constraint.js');
      const { mergeShards } = await import('../../study/run/merge.js');
      const { runStudy } = await import('../run-study.js');
      const asked = folders[0].about.asked as unknown as FactorsAsked;
      return runStudy(request, interrupt, {
        ...factorsShown(asked),
        stage: `${stage}, ${experiment(asked)}`,
        run: (how) => withConstraint(mergeShards(factorsDesign(asked), folders), asked, afterwards(how)),
      });
    },
  ],
]);

/** How is run what is looked at once the shards are together; no journal knows it. */
const afterwards = (how: Omit<How<never>, 'journal'>) => ({
  ...how,
  journal: undefined,
});

function checkNoJourney({ journey }: Values<typeof OPTIONS>, study: string): void {
  if (journey !== undefined)
    throw new UsageError(
      `--journey: expected shards of simulate, got those of ${study}, which tells of no single unit`,
      'leave --journey out',
    );
}
