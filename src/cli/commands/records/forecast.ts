import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { count } from '../../../study/format.js';
import { command } from '../../arguments/command.js';
import { ANSWER, FILE, INCLUDE_FROM, RUN, replications } from '../../arguments/options.js';
import { listenForInterrupt } from '../../interrupt.js';
import { AT, LOG, NAMES, ONE_THREAD } from './options.js';

export const forecast = command({
  name: 'forecast',
  words: { file: FILE, log: LOG },
  summary: 'which orders will be late, from where the floor stands',
  about: 'takes the floor as its log shows it at a moment and simulates the rest of the programme',
  examples: [
    [
      'rateproof forecast line.yaml floor.csv --at 2027-08-16',
      'which orders will be late, by how much, how sure',
    ],
    'rateproof forecast line.yaml floor.csv --at 2027-08-16 --replications 400 --out out/monday',
  ],
  options: {
    ...ANSWER,
    includeFrom: INCLUDE_FROM,
    seed: RUN.seed,
    replications: replications('builds of the rest of the programme', 100, 1),
    at: AT,
    names: NAMES,
  },
  request: (given) => given,
  run: async (request) => {
    const { loadScenario } = await import('../../load.js');
    const { runStudy } = await import('../../run-study.js');
    const { logSource, withLog } = await import('./floor-log.js');
    const { readNames } = await import('../../records/names-file.js');
    const { forecastStudy } = await import('../../../study/forecast/forecast.js');
    const { seed, replications, at, names } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file } = loadScenario(request.file, request.includeFrom),
      log = logSource(request.log, scenario, names === undefined ? undefined : readNames(names));
    return runStudy<ForecastResults>({ ...request, ...ONE_THREAD }, interrupt, {
      stage:
        `the rest of ${file} from ${log.file} at ${at.text}, ` +
        `${count(replications, 'build')}, seed ${seed}`,
      run: ({ signal, onReplication }) =>
        withLog(request.file, request.log, () =>
          forecastStudy({ scenario, file, log, at, seed, replications, signal, onReplication }),
        ),
      text: async () => (await import('../../../report/terminal/records/forecast.js')).forecastTable,
      drawing: async () => (await import('../../../report/files/forecast.js')).forecastFiles,
      stands: ({ orders }) => orders.some(({ late }) => (late ?? 0) > replications / 2),
    });
  },
});
