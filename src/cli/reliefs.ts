import { dirname, resolve } from 'node:path';
import { reliefsTable } from '../report/reliefs-terminal.js';
import { varyAssumptions } from '../scenario/vary.js';
import { noOtherRate } from '../study/relief-rate.js';
import { reliefsStudy } from '../study/reliefs.js';
import type { ExitCode } from './exit-code.js';
import { readText } from './file.js';
import { listenForInterrupt } from './interrupt.js';
import { loadScenario } from './load.js';
import type { ReliefsRequest } from './request.js';
import { runStudy } from './run-study.js';
import { UsageError } from './usage-error.js';

/** `rateproof reliefs`: the ranking on stdout and, if asked for, a report folder. */
export async function reliefs(request: ReliefsRequest): Promise<ExitCode> {
  const { replications, seed, workers, rate, file: path } = request, interrupt = listenForInterrupt();
  const { scenario, file } = loadScenario(path), noRate = rate === undefined ? null : noOtherRate(scenario);
  if (noRate !== null) throw new UsageError(`--rate: expected a scenario with a rate, got ${noRate}`, 'leave --rate out');
  const varied = scenario.assumptions.length === 0 ? [] : varyAssumptions(readText(path), path, (relative) => readText(resolve(dirname(path), relative)));
  return runStudy(request, interrupt, {
    stage: `trying reliefs of ${file}, up to ${replications} replications each, seed ${seed}`,
    run: (signal, onReplication) => reliefsStudy({ scenario, varied, file, rate, replications, seed, workers, signal, onReplication }),
    text: reliefsTable,
    drawing: async () => (await import('../report/reliefs-files.js')).reliefsFiles,
    // What would help is no finding.
    stands: () => false,
  });
}
