import { resultsTable } from '../../report/terminal/simulate.js';
import { numberOfBuild, type JourneyAsked } from '../../study/programme/journey.js';
import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Results } from '../../study/simulate/results.js';
import { identityOf } from '../../study/run/identity.js';
import { LEVEL, simulateStudy } from '../../study/simulate/simulate.js';
import { simulateDesign } from '../../study/simulate/design.js';
import { nearest } from '../../scenario/values/nearest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { stands, type ExitCode } from '../exit-code.js';
import { listenForInterrupt } from '../interrupt.js';
import { loadToRun } from '../load.js';
import { runStudy, type StudyCommand } from '../run-study.js';
import { runShard } from '../shard.js';
import { UsageError } from '../usage-error.js';
import type { AnswerRequest, SimulateRequest } from '../arguments/request.js';

/** `rateproof simulate`: the answer on stdout and, if asked for, a report folder. */
export async function simulate(request: SimulateRequest): Promise<ExitCode> {
  const { replications, seed, workers, shard, out, precision } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file, model } = await loadToRun(request, interrupt);
  checkJourney(request.journey, scenario, model);
  if (precision?.of.includes('cost') === true && scenario.costs === undefined)
    throw new UsageError(
      '--of: expected a scenario with costs for cost, got one without',
      'give the scenario prices, or leave cost out',
    );
  const asked = { scenario, file, replications, seed, level: LEVEL },
    runs = precision === undefined ? String(replications) : `${replications} to ${precision.most}`;
  const stage = `running ${runs} ${runs === '1' ? 'replication' : 'replications'} of ${file}, seed ${seed}`;
  if (shard !== undefined && out !== undefined)
    return runShard({ ...request, shard, out, asked, design: simulateDesign(asked), stage }, interrupt);
  return runStudy<Results, Observation>(request, interrupt, {
    ...SIMULATE,
    stage,
    identity: identityOf({ study: 'simulate', ...asked }),
    run: (signal, onReplication, journal) =>
      simulateStudy({
        ...asked,
        workers,
        precision,
        journey: journeyAsked(request),
        journal,
        signal,
        onReplication,
      }),
  });
}

/** How its answer is shown. */
export const SIMULATE: Pick<StudyCommand<Results>, 'text' | 'drawing' | 'stands'> = {
  text: resultsTable,
  drawing: async () => (await import('../../report/files/simulate.js')).reportFiles,
  stands,
};

/** Where nothing would show the journey, the replication that it takes is saved. */
export const journeyAsked = ({
  journey,
  out,
  json,
}: AnswerRequest & { readonly journey: string | undefined }): JourneyAsked | undefined =>
  journey !== undefined || out !== undefined || json ? { build: journey } : undefined;

/** Before the run, not after it. */
export function checkJourney(journey: string | undefined, scenario: Scenario, model: Model): void {
  if (journey !== undefined && numberOfBuild(model, journey) === undefined)
    throw noSuchBuild(journey, scenario);
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
