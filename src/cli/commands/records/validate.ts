import { LEVEL } from '../../../study/asked.js';
import { count } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { command } from '../../arguments/command.js';
import { optional } from '../../arguments/option.js';
import { ANSWER, FILE, INCLUDE_FROM, RUN, replications } from '../../arguments/options.js';
import { listenForInterrupt } from '../../interrupt.js';
import { day, LOG, NAMES, ONE_THREAD } from './options.js';

/** The least that tells 19 of 20. */
const LEAST = 10;

export const validate = command({
  name: 'validate',
  words: { file: FILE, log: LOG },
  summary: 'a scenario held against the log of the floor',
  about:
    'compares the log of a period with simulated builds of the same period: what agrees, what does not, ' +
    'which input most likely explains it, and what the model may be used for',
  examples: [
    ['rateproof validate line.yaml floor.csv', 'the log beside 40 simulated builds of the same weeks'],
    'rateproof validate line.yaml floor.csv --from 2027-08-16 --to 2027-10-29 --out out/valid',
    'rateproof validate line.yaml floor.csv --names names.yaml --json > results.json',
  ],
  options: {
    ...ANSWER,
    includeFrom: INCLUDE_FROM,
    seed: RUN.seed,
    replications: replications('simulated builds of the period', 40, LEAST),
    from: optional('first day compared, default the first on which the whole floor is known', day),
    to: optional('last day compared, default that of the last entry', day),
    names: NAMES,
  },
  request: (given) => given,
  run: async (request) => {
    const { loadScenario } = await import('../../load.js');
    const { runStudy } = await import('../../run-study.js');
    const { logSource, withLog } = await import('./floor-log.js');
    const { readNames } = await import('../../records/names-file.js');
    const { validateStudy } = await import('../../../study/validate/validate.js');
    const { seed, replications, from, to, names } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file } = loadScenario(request.file, request.includeFrom),
      log = logSource(request.log, scenario, names === undefined ? undefined : readNames(names));
    return runStudy<ValidateResults>({ ...request, ...ONE_THREAD }, interrupt, {
      stage: `holding ${file} against ${log.file}, ${count(replications, 'simulated build')}, seed ${seed}`,
      run: ({ signal, onReplication }) =>
        withLog(request.file, request.log, () =>
          validateStudy({
            scenario,
            file,
            log,
            seed,
            replications,
            level: LEVEL,
            from,
            to,
            signal,
            onReplication,
          }),
        ),
      text: async () => (await import('../../../report/terminal/records/validate.js')).validateTable,
      drawing: async () => (await import('../../../report/files/validate.js')).validateFiles,
      stands: ({ verdict }) => verdict !== 'agrees',
    });
  },
});
