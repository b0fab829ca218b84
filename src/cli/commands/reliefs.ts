import { dirname, resolve } from 'node:path';
import { reliefsTable } from '../../report/terminal/reliefs.js';
import { varyAssumptions, type VariedEnd } from '../../scenario/vary.js';
import type { Observation } from '../../measure/observe.js';
import { identityOf } from '../../study/run/identity.js';
import { noRateReason } from '../../study/rate/at-rate.js';
import type { Compared } from '../../study/reliefs/runs.js';
import { reliefsStudy, variedFingerprint } from '../../study/reliefs/reliefs.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import { LEVEL } from '../../study/simulate/simulate.js';
import type { ExitCode } from '../exit-code.js';
import { readText } from '../files.js';
import { listenForInterrupt } from '../interrupt.js';
import { loadToRun } from '../load.js';
import type { ReliefsRequest } from '../arguments/request.js';
import { runStudy } from '../run-study.js';
import { UsageError } from '../usage-error.js';

/** `rateproof reliefs`: the ranking on stdout and, if asked for, a report folder. */
export async function reliefs(request: ReliefsRequest): Promise<ExitCode> {
  const { replications, seed, workers, rate, file: path } = request,
    interrupt = listenForInterrupt();
  const { scenario, file, warmed } = await loadToRun(request, interrupt),
    noRate = rate === undefined ? null : noRateReason(scenario);
  if (noRate !== null)
    throw new UsageError(`--rate: expected a scenario with a rate, got ${noRate}`, 'leave --rate out');
  const warm = (end: VariedEnd | undefined): VariedEnd | undefined =>
    end && { ...end, scenario: warmed(end.scenario) };
  const varied = (
    scenario.assumptions.length === 0
      ? []
      : varyAssumptions(readText(path), path, (relative) => readText(resolve(dirname(path), relative)))
  ).map(({ assumption, low, high }) => ({ assumption, low: warm(low), high: warm(high) }));
  const asked = { rate, replications };
  return runStudy<ReliefsResults, Observation | Compared>(request, interrupt, {
    stage: `trying reliefs of ${file}, up to ${replications} replications each, seed ${seed}`,
    identity: identityOf({
      study: 'reliefs',
      scenario,
      seed,
      level: LEVEL,
      more: { ...asked, 'guesses and estimates': variedFingerprint(varied) },
    }),
    run: (signal, onReplication, journal) =>
      reliefsStudy({
        ...asked,
        scenario,
        varied,
        file,
        seed,
        level: LEVEL,
        workers,
        journal,
        signal,
        onReplication,
      }),
    text: reliefsTable,
    drawing: async () => (await import('../../report/files/reliefs.js')).reliefsFiles,
    // What would help is no finding.
    stands: () => false,
  });
}
