import type { Observation } from '../../measure/observe.js';
import { VALUES } from '../../study/asked.js';
import { count } from '../../study/format.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import type { Compared } from '../../study/reliefs/runs.js';
import { command } from '../arguments/command.js';
import { optional, withDefault } from '../arguments/option.js';
import { FILE, RUN, replications } from '../arguments/options.js';
import { positiveNumber, wholeNumber } from '../arguments/readers.js';
import { noShard } from '../arguments/shard.js';
import { listenForInterrupt } from '../interrupt.js';
import { UsageError } from '../usage-error.js';
import { onMap } from './map.js';

const HIGHEST_RATE = 100_000,
  MOST_VALUES = 10_000;

export const reliefs = command({
  name: 'reliefs',
  words: { file: FILE },
  summary: 'which small change helps most, which number to measure next',
  about: `tries each small change by itself (a person, a place, a space, a truck more, work a tenth
shorter, an hour of overtime ...) and each guess and estimate low and high; ranks them by the gain`,
  examples: [
    ['rateproof reliefs line.yaml', 'which small change helps most, which number to measure next'],
    'rateproof reliefs line.yaml --rate 5 --out out/reliefs',
  ],
  options: {
    shard: noShard('reliefs'),
    ...RUN,
    replications: replications('maximum replications per change', 40, 2),
    values: withDefault(
      'maximum guesses and estimates that are varied, those that may bear most first',
      String(VALUES),
      wholeNumber(0, MOST_VALUES),
    ),
    rate: optional(
      'highest rate of the plan in its own unit, a working day or a week, default as in the scenario',
      positiveNumber(HIGHEST_RATE, 'leave --rate out for what the scenario has'),
    ),
  },
  request: (given) => given,
  run: async (request) => {
    const { dataOf, dataToVary, loadToRun } = await import('../load.js');
    const { runStudy } = await import('../run-study.js');
    const { noRateReason } = await import('../../study/rate/at-rate.js');
    const { assumptionsFingerprint, reliefsStudy } = await import('../../study/reliefs/reliefs.js');
    const { identityOf } = await import('../../study/run/identity.js');
    const { replications, seed, values, rate } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, model } = await loadToRun(request, interrupt),
      noRate = rate === undefined ? null : noRateReason(scenario);
    if (noRate !== null)
      throw new UsageError(`--rate: expected a scenario with a rate, got ${noRate}`, 'leave --rate out');
    const { possibleOf } = await import('../../scenario/changes/possible.js'),
      { possibleFingerprint } = await import('../../study/priced/wanted.js'),
      isPriced = possibleOf(scenario).length > 0;
    const varied = dataToVary(request.file, scenario),
      data = isPriced ? dataOf(request.file, scenario) : varied;
    const { plannersUnit } = await import('../../study/unit-of.js');
    const asked = {
      rate: rate === undefined ? undefined : rate / plannersUnit(scenario).workingDays,
      replications,
      values,
    };
    return runStudy<ReliefsResults, Observation | Compared>(request, interrupt, {
      stage: `trying reliefs of ${file}, up to ${count(replications, 'replication')} each, seed ${seed}`,
      identity: identityOf({
        study: 'reliefs',
        scenario,
        seed,
        more: {
          ...asked,
          'guesses and estimates': assumptionsFingerprint(varied === undefined ? [] : scenario.assumptions),
          ...(isPriced && { 'possible changes': possibleFingerprint(scenario) }),
        },
      }),
      run: (how) => reliefsStudy({ ...asked, ...how, scenario, data, file, seed }),
      text: async () => (await import('../../report/terminal/reliefs.js')).reliefsTable,
      drawing: async () => {
        const { reliefsFiles } = await import('../../report/files/reliefs.js'),
          { markedReliefs } = await import('../../report/map/marked.js');
        return onMap(reliefsFiles, scenario, model, markedReliefs);
      },
      // What would help is no finding.
      stands: () => false,
    });
  },
});
