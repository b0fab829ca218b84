import { count, exact } from '../../study/format.js';
import { USUAL_SURE } from '../../study/held/sure.js';
import type { RateResults } from '../../study/rate/results.js';
import type { Reading } from '../../study/sample/reading.js';
import { command } from '../arguments/command.js';
import { type Option, optional, required, withDefault } from '../arguments/option.js';
import { FILE, MOST_REPLICATIONS, RUN } from '../arguments/options.js';
import { hundredth, numberIn, positiveNumber, reader, wholeNumber } from '../arguments/readers.js';
import { noShard } from '../arguments/shard.js';
import { listenForInterrupt } from '../interrupt.js';
import { UsageError } from '../usage-error.js';
import { onMap } from './map.js';

const HIGHEST_RATE = 10_000,
  MOST_RATES = 1000,
  MOST_WEEKS = 520,
  /** A rate that is not settled gets up to four times as many, which is to stay within the limit. */
  MOST_OF_RATE = MOST_REPLICATIONS / 4;

const UNITS = 'units a working day, or a week where the programme is given per week';
const someRate = positiveNumber(HIGHEST_RATE, `${UNITS}, for example --from 3 --to 6 --step 0.1`);
const bound = (help: string): Option<number> =>
  required(help, someRate, 'a rate', `${UNITS}, for example --from 3 --to 6`);
/** Unit of all rates. */
const dayOrWeek = reader(
  'day or week',
  (option) => `leave ${option} out for the unit in which the programme gives its rate`,
  (text) => (['day', 'week'] as const).find((per) => per === text),
);
/** Resolution of the answer where none is asked, units a working day. */
const STEP = 0.1;

/** A share of replications. */
const sure = reader(
  'per cent from 1 to 99',
  (option) => `for example ${option} "80 %"`,
  (text) => hundredth(numberIn(text, /^\d{1,3}(\.\d{1,4})?( ?%)?$/, 1, 99)),
);

export const rate = command({
  name: 'rate',
  words: { file: FILE },
  summary: 'the highest rate that holds',
  about: 'the highest rate that holds, what stops it at each rate, and when a ramp may reach it',
  examples: [
    ['rateproof rate line.yaml --from 3 --to 6', 'the highest rate that holds, and when a ramp may reach it'],
    'rateproof rate line.yaml --from 3 --to 6 --step 0.25 --sure "90 %" --out out/rate',
    'rateproof rate line.yaml --from 3 --to 6 --weeks 52 --ramp-to 5',
    'rateproof rate line.yaml --per week --from 15 --to 30 --step 1',
  ],
  options: {
    shard: noShard('rate'),
    ...RUN,
    from: bound('lowest rate tried, units a working day or, by --per, a week'),
    to: bound('highest rate tried'),
    per: optional('unit of all rates, day or week, default as the programme gives its own', dayOrWeek),
    step: optional('resolution of the answer, default 0.1 a day (0.5 in a week of five)', someRate),
    replications: withDefault(
      'replications of each rate, up to four times as many where it is not settled',
      '30',
      wholeNumber(2, MOST_OF_RATE),
    ),
    weeks: optional(
      'how long each rate is watched, default 26, or as long as its loads take',
      wholeNumber(2, MOST_WEEKS),
    ),
    settle: optional(
      'weeks for the floor to fill before that, default by the lead time',
      wholeNumber(1, MOST_WEEKS),
    ),
    sure: withDefault('share of builds that must keep up', `${100 * USUAL_SURE} %`, sure),
    rampTo: optional('target rate of the ramp, default the highest that holds', someRate),
  },
  request: (given) => {
    const { from, to, step } = given;
    if (to < from)
      throw new UsageError(
        `--to: expected a rate of at least --from ${from}, got ${to}`,
        'for example --from 3 --to 6',
      );
    if (step !== undefined) checkStep(from, to, step);
    return given;
  },
  run: async (request) => {
    const { dataToVary, lineOf, loadScenario, plannedRun } = await import('../load.js');
    const { runStudy } = await import('../run-study.js');
    const { noRateReason } = await import('../../study/rate/at-rate.js');
    const { rateStudy } = await import('../../study/rate/rate.js');
    const { identityOf } = await import('../../study/run/identity.js');
    const { each } = await import('../../study/planners-unit.js');
    const { plannersUnit, unitPer } = await import('../../study/unit-of.js');
    const { from, to, replications, weeks, settle: settleWeeks, sure, rampTo } = request;
    const { seed } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, model } = loadScenario(request.file, request.includeFrom),
      reason = noRateReason(scenario);
    if (reason !== null)
      throw new UsageError(
        `${lineOf(request.file, 'programme')} programme: expected one with a \`rate\`, got ${reason}`,
        'write `rate: { per day: 4 }` in its place; the study changes this rate',
      );
    const data = dataToVary(request.file, scenario),
      unit = request.per === undefined ? plannersUnit(scenario) : unitPer(request.per, scenario),
      step = request.step ?? STEP * unit.workingDays;
    checkStep(from, to, step);
    const asked = { unit, from, to, step, replications, weeks, settleWeeks, sure, rampTo };
    return runStudy<RateResults, Reading>(request, interrupt, {
      stage:
        `looking for the highest rate from ${from} to ${to} ${each(unit)} that ${file} holds, ` +
        `${count(replications, 'replication')} a rate, seed ${seed}`,
      identity: identityOf({ study: 'rate', scenario, seed, more: asked }),
      run: (how) =>
        plannedRun(request.file, () => rateStudy({ ...asked, ...how, scenario, data, file, seed })),
      text: async () => (await import('../../report/terminal/rate.js')).rateTable,
      drawing: async () => {
        const { rateFiles } = await import('../../report/files/rate.js'),
          { seenAtRate } = await import('../../report/map/seen.js');
        return onMap(rateFiles, scenario, model, seenAtRate);
      },
      stands: rateStands,
    });
  },
});

function checkStep(from: number, to: number, step: number): void {
  if ((to - from) / step > MOST_RATES)
    throw new UsageError(
      `--step: expected at most ${exact(MOST_RATES)} rates, got ${exact(Math.floor((to - from) / step) + 1)}`,
      'give a wider step',
    );
}

/** No rate holds, or the plan asks for more than does. */
const rateStands = ({ answer: { highestPerDay, abovePerDay }, plannedPerDay }: RateResults): boolean =>
  highestPerDay === null || (abovePerDay !== null && plannedPerDay >= abovePerDay);
