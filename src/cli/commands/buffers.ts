import { basename } from 'node:path';
import type { Observation } from '../../measure/observe.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Cases } from '../../study/buffers/cases/spots-of-all.js';
import type { BufferGoal, ShareOf } from '../../study/buffers/goal.js';
import type { BufferResults } from '../../study/buffers/results.js';
import type { Trial } from '../../study/buffers/search/trial.js';
import { count, exact } from '../../study/format.js';
import { command } from '../arguments/command.js';
import { optional, type Reader, repeatable, withDefault } from '../arguments/option.js';
import { FILE, RUN, replications } from '../arguments/options.js';
import {
  filledText,
  hundredth,
  numberIn,
  oneOf,
  perCent,
  reader,
  wholeNumber,
} from '../arguments/readers.js';
import { noShard } from '../arguments/shard.js';
import { listenForInterrupt } from '../interrupt.js';
import { UsageError } from '../usage-error.js';
import { loadWhatIfs } from './compare.js';
import { onMap } from './map.js';

const HIGHEST_RATE = 100_000,
  MOST_PLACES = 100_000,
  MOST_PER_CENT = 200;

/** A rate, or a share of what another layout ships. */
const readTarget: Reader<number | { readonly share: number; readonly of: ShareOf }> = reader(
  `a number above 0 and at most ${exact(HIGHEST_RATE)}, or a share of what another layout ships`,
  (option) => `for example ${option} 4.2, ${option} "98 % of unlimited" or ${option} "98 % of present"`,
  (text) => {
    const [, percent = '', of] = /^(\d.*%) of (unlimited|present)$/.exec(text) ?? [];
    if (of !== 'unlimited' && of !== 'present')
      return numberIn(text, /^\d{1,12}(\.\d{1,12})?$/, Number.MIN_VALUE, HIGHEST_RATE);
    const share = hundredth(numberIn(percent, /^\d{1,3}(\.\d{1,6})? ?%$/, Number.MIN_VALUE, MOST_PER_CENT));
    return share === undefined ? undefined : { share, of };
  },
);

export const buffers = command({
  name: 'buffers',
  words: { file: FILE },
  summary: 'waiting places, distributed',
  about: 'the fewest waiting places in buffers and banks that do as well as a budget, or reach a rate',
  examples: [
    ['rateproof buffers line.yaml --budget 20', 'how few of 20 waiting places do as well, and where'],
    'rateproof buffers line.yaml --budget 20 --out out/places',
    'rateproof buffers line.yaml --target 4.2 --from present',
    [
      'rateproof buffers line.yaml --target "98 % of unlimited"',
      'how few places ship 98 % of what no limit does',
    ],
    [
      'rateproof buffers line.yaml --budget 20 --cases what-ifs.yaml',
      'one layout that does in the scenario as it is and in every what-if',
    ],
    'rateproof buffers line.yaml --budget 6 --at "colour booth" --at "weld bay"',
  ],
  options: {
    shard: noShard('buffers'),
    ...RUN,
    budget: optional(
      'the most waiting places in all; fewer are chosen if they do as well',
      wholeNumber(0, MOST_PLACES),
    ),
    target: optional(
      'units a working day (a week where the plan is; an hour in a steady run), ' +
        '"98 % of unlimited" places, or "98 % of present", for the fewest places',
      readTarget,
    ),
    cases: optional(
      'file of what-ifs, as for compare: one layout for the scenario as it is and all of them, ' +
        'by the case in which it loses most',
      filledText('a file of what-ifs', 'what-ifs.yaml'),
    ),
    at: repeatable(
      'a station or lane whose places are distributed, repeatable; ' +
        'default all limited buffers and banks of the route',
    ),
    from: optional(
      'start of the search: least (no places) or present (the present layout); default least, or with ' +
        'more than six spots the better of the present layout and the places used without limits, cut ' +
        'in proportion',
      oneOf('least', 'present'),
    ),
    replications: replications('replications of each layout in the search', 20, 3),
    zone: withDefault('difference in throughput that does not matter', '1 %', perCent),
  },
  request: ({ budget, target, ...given }) => ({ ...given, goal: goalOf(budget, target) }),
  run: async (request) => {
    const { dataToVary, loadToRun } = await import('../load.js');
    const { runStudy } = await import('../run-study.js');
    const { buffersStudy } = await import('../../study/buffers/buffers.js');
    const { identityOf } = await import('../../study/run/identity.js');
    const { digest } = await import('../../scenario/digest.js');
    const { goal, at, from, replications, seed, zone } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, model, warmed } = await loadToRun(request, interrupt);
    const cases = await casesOf(request, warmed);
    await checkAsked(request, scenario, cases);
    const asked = { goal, at, from, replications, zone },
      data = dataToVary(request.file, scenario);
    return runStudy<BufferResults, Observation | Trial | number>(request, interrupt, {
      stage: `running ${count(replications, 'replication')} of ${file} as it is, seed ${seed}`,
      identity: identityOf({
        ...{ study: 'buffers', scenario, seed },
        more: { ...asked, cases: cases?.whatIfs.map((each) => [each.name, digest(each.scenario)]) },
      }),
      run: (how) => buffersStudy({ ...asked, ...how, cases, scenario, data, file, seed }),
      text: async () => (await import('../../report/terminal/buffers/buffers.js')).buffersTable,
      drawing: async () => {
        const { buffersFiles } = await import('../../report/files/buffers.js'),
          { markedBuffers } = await import('../../report/map/marked.js');
        return onMap(buffersFiles, scenario, model, markedBuffers);
      },
      stands: ({ answer: { verdict } }) => verdict === 'not reached' || verdict === 'out of reach',
    });
  },
});

function goalOf(budget: number | undefined, target: ReturnType<typeof readTarget> | undefined): BufferGoal {
  if (budget !== undefined && target === undefined) return { kind: 'budget', places: budget };
  if (target !== undefined && budget === undefined)
    return typeof target === 'number' ? { kind: 'target', rate: target } : { kind: 'share', ...target };
  throw new UsageError(
    `expected either --budget or --target, got ${budget === undefined ? 'none' : 'both'}`,
    'for example --budget 20, --target 4.2 or --target "98 % of unlimited"',
  );
}

interface Asked {
  readonly at: readonly string[];
  readonly goal: BufferGoal;
  readonly file: string;
  readonly cases: string | undefined;
}

/** The what-ifs under which a layout has to do as well; undefined: none is asked for. */
async function casesOf(
  { cases, file }: Asked,
  warmed: (scenario: Scenario) => Scenario,
): Promise<Cases | undefined> {
  if (cases === undefined) return undefined;
  const whatIfs = await loadWhatIfs(cases, file);
  return {
    file: basename(cases),
    whatIfs: whatIfs.map((each) => ({ ...each, scenario: warmed(each.scenario) })),
  };
}

/** What the scenario cannot give is said before anything is run. */
async function checkAsked(
  { at, goal, file, cases: casesFile }: Asked,
  scenario: Scenario,
  cases: Cases | undefined,
): Promise<void> {
  const { checkGoal } = await import('../../study/buffers/goal.js');
  const { spotsOfAll } = await import('../../study/buffers/cases/spots-of-all.js');
  try {
    checkGoal(goal, spotsOfAll(scenario, at, cases));
  } catch (error) {
    if (error instanceof RangeError)
      throw new UsageError(
        `--${error.message}`,
        `the buffers and banks are those of ${file}` +
          (casesFile === undefined ? '' : `, the what-ifs those of ${casesFile}`),
      );
    throw error;
  }
}
