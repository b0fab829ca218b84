import type { Model } from '../../flow/model/model.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { nearest } from '../../scenario/values/nearest.js';
import { LEVEL } from '../../study/asked.js';
import { exact } from '../../study/format.js';
import type { JourneyAsked } from '../../study/programme/journey.js';
import type { SimulateAsked, SimulateValue } from '../../study/simulate/design.js';
import type { Results } from '../../study/simulate/results.js';
import { command } from '../arguments/command.js';
import { checkInputs, INPUTS } from '../arguments/inputs.js';
import { type AnswerRequest, FILE, JOURNEY, RUN, replications } from '../arguments/options.js';
import { PRECISION, precisionAsked } from '../arguments/precision.js';
import { checkShard, SHARD } from '../arguments/shard.js';
import { checkTrace, TRACE } from '../arguments/trace.js';
import { listenForInterrupt } from '../interrupt.js';
import type { Study } from '../run-study.js';
import { UsageError } from '../usage-error.js';
import { onMap } from './map.js';

export const simulate = command({
  name: 'simulate',
  words: { file: FILE },
  summary: 'replications, with intervals',
  about: 'runs the build many times and says whether the rate holds, where it breaks, when it ends',
  examples: [
    ['rateproof simulate line.yaml', '20 replications, the answer as a table'],
    [
      'rateproof simulate line.yaml --out out/line',
      'the same, with pictures, a page and data in a new folder',
    ],
    'rateproof simulate line.yaml --replications 100 --out out/line',
    'rateproof simulate line.yaml --precision 1% --of throughput,lead-time,cost',
    'rateproof simulate line.yaml --inputs uncertain --replications 100',
    'rateproof simulate line.yaml --json --quiet > results.json',
    ['rateproof simulate line.yaml --trace log.csv', 'the same, and the floor log of its first replication'],
  ],
  options: {
    ...RUN,
    replications: replications('number of replications of the whole build', 20, 1),
    ...PRECISION,
    inputs: INPUTS,
    journey: JOURNEY,
    ...TRACE,
    shard: SHARD,
  },
  request: (given) => {
    const precision = precisionAsked(given, given.replications);
    checkInputs({ ...given, precision });
    checkShard({ ...given, precision });
    checkTrace(given);
    return { ...given, precision };
  },
  run: async (request) => {
    const { loadToRun, dataOf, dataToVary } = await import('../load.js');
    const { identityOf } = await import('../../study/run/identity.js');
    const { replications, seed, shard, out, precision } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, model } = await loadToRun(request, interrupt);
    await checkJourney(request.journey, scenario, model);
    if (precision?.of.includes('cost') === true && scenario.costs === undefined)
      throw new UsageError(
        '--of: expected a scenario with costs for cost, got one without',
        'give the scenario prices, or leave cost out',
      );
    const hasLevers = out !== undefined && scenario.levers.length > 0,
      inputs = request.inputs === 'uncertain' ? request.inputs : undefined,
      data =
        hasLevers || inputs !== undefined
          ? dataOf(request.file, scenario)
          : dataToVary(request.file, scenario),
      asked = { scenario, file, replications, seed, level: LEVEL, data, inputs },
      runs =
        precision === undefined ? exact(replications) : `${exact(replications)} to ${exact(precision.most)}`,
      { outageTrials } = await import('../../study/simulate/without-outages.js'),
      trials = outageTrials(model).length,
      stage =
        `running ${runs} ${runs === '1' ? 'replication' : 'replications'} of ${file}, seed ${seed}` +
        (trials === 0 ? '' : `, and some of ${trials === 1 ? 'it' : `${trials} builds`} without its outages`);
    if (request.trace !== undefined) {
      const { writeTrace } = await import('../records/trace.js'),
        replication = request.traceReplication ?? 1;
      writeTrace({ file: request.trace, seed, replication }, scenario, model);
    }
    if (shard !== undefined && out !== undefined) {
      const { simulateDesign } = await import('../../study/simulate/design.js');
      const { runShard } = await import('../shard.js');
      return runShard({ ...request, shard, out, asked, design: simulateDesign(asked), stage }, interrupt);
    }
    const { runStudy } = await import('../run-study.js');
    const { drawnOf } = await import('../../study/uncertain/drawn.js');
    const { simulateStudy } = await import('../../study/simulate/simulate.js');
    return runStudy<Results, SimulateValue>(request, interrupt, {
      ...simulateShown(asked, model),
      stage,
      identity: identityOf({ study: 'simulate', ...asked, more: drawnOf(asked).identity }),
      run: (how) => simulateStudy({ ...asked, ...how, precision, journey: journeyAsked(request) }),
    });
  },
});

/** How its answer is shown: with a map of the scenario that was run, and with its levers. */
export const simulateShown = (
  { scenario, data, inputs }: Pick<SimulateAsked, 'scenario' | 'data' | 'inputs'>,
  model: Model,
): Pick<Study<Results>, 'text' | 'drawing' | 'stands'> => ({
  text: async () => (await import('../../report/terminal/simulate.js')).resultsTable,
  drawing: async () => {
    const { reportFiles } = await import('../../report/files/simulate.js'),
      { seenIn } = await import('../../report/map/seen.js'),
      { withTryIt } = await import('../../report/files/folder/study-files.js'),
      { setLevers } = await import('../../scenario/levers.js'),
      mapped = await onMap(reportFiles, scenario, model, seenIn);
    // What is tried in the page is the scenario as written: beside other inputs it would mislead.
    return data === undefined || scenario.levers.length === 0 || inputs !== undefined
      ? mapped
      : withTryIt(mapped, { ...data, levers: setLevers(data.value, scenario.levers) });
  },
  stands: ({ answer, findings }) => findings.length > 0 || answer.verdict === 'falls short',
});

/** Where nothing would show the journey, the replication that it takes is saved. */
export const journeyAsked = ({
  journey,
  out,
  json,
}: AnswerRequest & { readonly journey: string | undefined }): JourneyAsked | undefined =>
  journey !== undefined || out !== undefined || json ? { build: journey } : undefined;

/** Throws a UsageError before the run, not after it, for a unit that there is not. */
export async function checkJourney(
  journey: string | undefined,
  scenario: Scenario,
  model: Model,
): Promise<void> {
  if (journey === undefined) return;
  const { numberOfBuild } = await import('../../study/programme/journey.js');
  if (numberOfBuild(model, journey) === undefined) throw noSuchBuild(journey, scenario);
}

function noSuchBuild(build: string, { programme: { quantity, orders } }: Scenario): UsageError {
  if (quantity === undefined)
    return new UsageError(
      `--journey: expected a programme with a quantity, got "${build}" in one without`,
      'units of a run without a quantity are not kept by number',
    );
  const near = nearest(
    build,
    orders.list.flatMap((order) => order.build ?? []),
  );
  return new UsageError(
    `--journey: expected a build number of the ${quantity} units, got "${build}"`,
    near === undefined
      ? 'units without a build number of their own are called 1, 2, .. in the order of release'
      : `did you mean ${near}?`,
  );
}
