import { stableJson } from '../report/json.js';
import { resultsTable } from '../report/terminal.js';
import { numberOfBuild } from '../study/journey.js';
import { simulateStudy } from '../study/simulate.js';
import { nearest } from '../scenario/names-nearest.js';
import type { Scenario } from '../scenario/scenario.js';
import { codeOf, type ExitCode } from './exit-code.js';
import { listenForInterrupt } from './interrupt.js';
import { loadScenario } from './load.js';
import { checkOut, writeReport } from './out-folder.js';
import { print, say } from './output.js';
import { progressOf } from './progress.js';
import { UsageError } from './usage-error.js';
import type { SimulateRequest } from './request.js';

/** `rateproof simulate`: the answer on stdout and, if asked for, a report folder. */
export async function simulate(request: SimulateRequest): Promise<ExitCode> {
  const { replications, seed, workers, out, quiet } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file, model } = loadScenario(request.file), { journey } = request;
  if (journey !== undefined && numberOfBuild(model, journey) === undefined) throw noSuchBuild(journey, scenario);
  // Before a run that may take long, not after it.
  if (out !== undefined) checkOut(out, request.replace);

  const progress = await progressOf(quiet);
  progress.stage(`running ${replications} ${replications === 1 ? 'replication' : 'replications'} of ${file}, seed ${seed}`);
  // Where nothing would show it, the replication that it takes is saved.
  const tells = journey !== undefined || out !== undefined || request.json;
  const study = simulateStudy({ scenario, file, replications, seed, workers, journey: tells ? { build: journey } : undefined, signal: interrupt.signal, onReplication: progress.replications });
  const results = await interrupt.orStop(study).finally(progress.stop);

  // Printed first: whatever happens to the folder, the answer is not lost.
  print(request.json ? stableJson(results) : resultsTable(results));
  if (out !== undefined) {
    progress.stage('drawing the report');
    await writeReport(out, results, request.replace, interrupt);
    progress.stage(`report: ${out}`);
  } else if (!quiet) {
    say('hint: --out DIR writes a folder with pictures, a page to read and the data');
  }
  return codeOf(results, request.findingOk);
}

function noSuchBuild(build: string, { programme: { quantity, orders } }: Scenario): UsageError {
  if (quantity === undefined) return new UsageError(`--journey: expected a programme with a quantity, got "${build}" in one without`, 'units of a run without a quantity are not kept by number');
  const near = nearest(build, orders.list.flatMap((order) => order.build ?? []));
  return new UsageError(`--journey: expected a build number of the ${quantity} units, got "${build}"`, near === undefined ? 'units without a build number of their own are called 1, 2, .. in the order of release' : `did you mean ${near}?`);
}
