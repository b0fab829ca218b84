import { stableJson } from '../report/json.js';
import { resultsTable } from '../report/terminal.js';
import { simulateStudy } from '../study/simulate.js';
import { codeOf, type ExitCode } from './exit-code.js';
import { listenForInterrupt } from './interrupt.js';
import { loadScenario } from './load.js';
import { checkOut, writeReport } from './out-folder.js';
import { print, say } from './output.js';
import { progressOf } from './progress.js';
import type { SimulateRequest } from './request.js';

/** `rateproof simulate`: the answer on stdout and, if asked for, a report folder. */
export async function simulate(request: SimulateRequest): Promise<ExitCode> {
  const { replications, seed, workers, out, quiet } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file } = loadScenario(request.file);
  // Before a run that may take long, not after it.
  if (out !== undefined) checkOut(out, request.replace);

  const progress = await progressOf(quiet);
  progress.stage(`running ${replications} ${replications === 1 ? 'replication' : 'replications'} of ${file}, seed ${seed}`);
  const study = simulateStudy({ scenario, file, replications, seed, workers, signal: interrupt.signal, onReplication: progress.replications });
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
