import { buffersTable } from '../../report/terminal/buffers.js';
import { buffersStudy, checkGoal } from '../../study/buffers/buffers.js';
import { spotsOf } from '../../study/buffers/spots.js';
import type { Trial } from '../../study/buffers/trial.js';
import type { Observation } from '../../measure/observe.js';
import { identityOf } from '../../study/run/identity.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { LEVEL } from '../../study/simulate/simulate.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { ExitCode } from '../exit-code.js';
import { listenForInterrupt } from '../interrupt.js';
import { loadToRun } from '../load.js';
import { runStudy } from '../run-study.js';
import { UsageError } from '../usage-error.js';
import type { BuffersRequest } from '../arguments/request.js';

/**
 * `rateproof buffers`: waiting places shared out, the answer on stdout and, if asked for, a report folder.
 */
export async function buffers(request: BuffersRequest): Promise<ExitCode> {
  const { goal, at, from, replications, seed, workers, zone } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file } = await loadToRun(request, interrupt);
  checkAsked(request, scenario);
  const asked = { goal, at, from, replications, zone };
  return runStudy<BufferResults, Observation | Trial>(request, interrupt, {
    stage: `running ${replications} replications of ${file} as it is, seed ${seed}`,
    identity: identityOf({ study: 'buffers', scenario, seed, level: LEVEL, more: asked }),
    run: (signal, onReplication, journal, onStage) =>
      buffersStudy({
        ...asked,
        scenario,
        file,
        seed,
        level: LEVEL,
        workers,
        journal,
        signal,
        onReplication,
        onStage,
      }),
    text: buffersTable,
    drawing: async () => (await import('../../report/files/buffers.js')).buffersFiles,
    stands: ({ answer: { verdict } }) => verdict === 'not reached' || verdict === 'out of reach',
  });
}

/** What the scenario cannot give is said before anything is run. */
function checkAsked({ at, goal, file }: BuffersRequest, scenario: Scenario): void {
  try {
    checkGoal(goal, spotsOf(scenario, at));
  } catch (error) {
    if (error instanceof RangeError)
      throw new UsageError(`--${error.message}`, `the buffers and banks are those of ${file}`);
    throw error;
  }
}
