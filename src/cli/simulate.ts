import { resultsTable } from '../report/terminal.js';
import { numberOfBuild } from '../study/journey.js';
import { simulateStudy } from '../study/simulate.js';
import { nearest } from '../scenario/names-nearest.js';
import type { Scenario } from '../scenario/scenario.js';
import { stands, type ExitCode } from './exit-code.js';
import { listenForInterrupt } from './interrupt.js';
import { loadScenario } from './load.js';
import { runStudy } from './run-study.js';
import { UsageError } from './usage-error.js';
import type { SimulateRequest } from './request.js';

/** `rateproof simulate`: the answer on stdout and, if asked for, a report folder. */
export async function simulate(request: SimulateRequest): Promise<ExitCode> {
  const { replications, seed, workers, out, journey } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file, model } = loadScenario(request.file);
  if (journey !== undefined && numberOfBuild(model, journey) === undefined) throw noSuchBuild(journey, scenario);
  // Where nothing would show it, the replication that it takes is saved.
  const tells = journey !== undefined || out !== undefined || request.json;
  return runStudy(request, interrupt, {
    stage: `running ${replications} ${replications === 1 ? 'replication' : 'replications'} of ${file}, seed ${seed}`,
    run: (signal, onReplication) => simulateStudy({ scenario, file, replications, seed, workers, journey: tells ? { build: journey } : undefined, signal, onReplication }),
    text: resultsTable,
    drawing: async () => (await import('../report/files.js')).reportFiles,
    stands,
  });
}

function noSuchBuild(build: string, { programme: { quantity, orders } }: Scenario): UsageError {
  if (quantity === undefined) return new UsageError(`--journey: expected a programme with a quantity, got "${build}" in one without`, 'units of a run without a quantity are not kept by number');
  const near = nearest(build, orders.list.flatMap((order) => order.build ?? []));
  return new UsageError(`--journey: expected a build number of the ${quantity} units, got "${build}"`, near === undefined ? 'units without a build number of their own are called 1, 2, .. in the order of release' : `did you mean ${near}?`);
}
