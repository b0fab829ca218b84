import { rateTable } from '../../report/terminal/rate.js';
import { noRateReason } from '../../study/rate/at-rate.js';
import type { RateReading } from '../../study/rate/verdict.js';
import { rateStudy } from '../../study/rate/rate.js';
import type { RateResults } from '../../study/rate/results.js';
import { identityOf } from '../../study/run/identity.js';
import { LEVEL } from '../../study/simulate/simulate.js';
import type { ExitCode } from '../exit-code.js';
import { listenForInterrupt } from '../interrupt.js';
import { loadScenario, plannedRun } from '../load.js';
import type { RateRequest } from '../arguments/request.js';
import { runStudy } from '../run-study.js';
import { UsageError } from '../usage-error.js';

/** `rateproof rate`: the highest rate that holds, and when a ramp may reach it. */
export async function rate(request: RateRequest): Promise<ExitCode> {
  const interrupt = listenForInterrupt();
  const { scenario, file } = loadScenario(request.file),
    reason = noRateReason(scenario);
  if (reason !== null)
    throw new UsageError(
      `${request.file}: programme: expected one with a \`rate\`, got ${reason}`,
      'write `rate: { per day: 4 }` in its place; the study changes this rate',
    );
  const { from, to, step, replications, weeks, settleWeeks, sure, rampTo, seed, workers } = request;
  const asked = { from, to, step, replications, weeks, settleWeeks, sure, rampTo };
  return runStudy<RateResults, RateReading>(request, interrupt, {
    stage:
      `looking for the highest rate from ${from} to ${to} a day that ${file} holds, ` +
      `${replications} replications a rate, seed ${seed}`,
    identity: identityOf({ study: 'rate', scenario, seed, level: LEVEL, more: asked }),
    run: (signal, onReplication, journal) =>
      plannedRun(request.file, () =>
        rateStudy({ ...asked, scenario, file, seed, level: LEVEL, workers, journal, signal, onReplication }),
      ),
    text: rateTable,
    drawing: async () => (await import('../../report/files/rate.js')).rateFiles,
    stands: rateStands,
  });
}

/** No rate holds, or the plan asks for more than does. */
const rateStands = ({ answer: { highestPerDay, abovePerDay }, plannedPerDay }: RateResults): boolean =>
  highestPerDay === null || (abovePerDay !== null && plannedPerDay >= abovePerDay);
