import type { Observation } from '../../measure/observe.js';
import { isDate } from '../../scenario/values/quantity.js';
import { exact } from '../../study/format.js';
import type { PlannersUnit } from '../../study/planners-unit.js';
import type { ReachGoal, ReachResults } from '../../study/reach/results.js';
import type { Seen } from '../../study/reach/told.js';
import { command } from '../arguments/command.js';
import { optional } from '../arguments/option.js';
import { FILE, RUN, replications } from '../arguments/options.js';
import { numberIn, positiveNumber, reader, wholeNumber } from '../arguments/readers.js';
import { noShard } from '../arguments/shard.js';
import { listenForInterrupt } from '../interrupt.js';
import { UsageError } from '../usage-error.js';
import { onMap } from './map.js';

const HIGHEST_RATE = 100_000,
  MOST_MONEY = 1e12,
  MOST_CHANGES = 100,
  /** Up to four times as many are run of what is not settled, and what is told comes behind these. */
  MOST_TOLD = 1000;

const day = reader(
  'a day such as 2028-03-01',
  (option) => `for example ${option} 2028-03-01`,
  (text) => (isDate(text) ? text : undefined),
);

export const reach = command({
  name: 'reach',
  words: { file: FILE },
  summary: 'the cheapest set of changes that gets to the rate, and the way there',
  about: `the cheapest set of the changes under costs: changes that holds a rate, or has the last unit out by
a day: what to buy, in which order, and where each step leads`,
  examples: [
    [
      'rateproof reach line.yaml --rate 4',
      'what to buy, in which order, to ship four a day for the least money',
    ],
    'rateproof reach line.yaml --rate 4 --budget 500000 --at-most 3 --out out/reach',
    'rateproof reach line.yaml --rate 4 --ordered 2027-06-01 --by 2027-12-01',
    'rateproof reach line.yaml --date 2028-03-10',
  ],
  options: {
    shard: noShard('reach'),
    ...RUN,
    rate: optional(
      'rate to be held, in the unit of the plan, a working day or a week, default the highest of the plan',
      positiveNumber(HIGHEST_RATE, 'leave --rate out for the highest of the plan'),
    ),
    date: optional(
      'in the place of a rate: the day by which the last unit is out, in 80 % of the builds',
      day,
    ),
    by: optional('the day from which on the rate is to be held; it is judged in the weeks from then on', day),
    ordered: optional(
      'the day of the order: each change is there a lead time later; default: from the first day on',
      day,
    ),
    budget: optional(
      'money that may be spent once, default no limit',
      reader(
        `an amount of money up to ${exact(MOST_MONEY)}`,
        (option) => `for example ${option} 500000`,
        (text) => numberIn(text, /^\d{1,13}(\.\d{1,2})?$/, 0, MOST_MONEY),
      ),
    ),
    atMost: optional(
      'changes that may be made, each as often as it is, default no limit',
      wholeNumber(1, MOST_CHANGES),
    ),
    replications: replications('fresh replications by which each build is told', 40, 2),
  },
  request: (given) => {
    const { rate, date, by, replications } = given;
    if (rate !== undefined && date !== undefined)
      throw new UsageError('--date: expected no --rate beside it, got both', 'leave one of them out');
    if (by !== undefined && date !== undefined)
      throw new UsageError('--by: expected a rate to be held from that day on, got --date', 'leave --by out');
    if (replications > MOST_TOLD)
      throw new UsageError(
        `--replications: expected at most ${exact(MOST_TOLD)}, got ${exact(replications)}`,
        'up to four times as many are run where it is close',
      );
    return given;
  },
  run: async (request) => {
    const { dataOf, lineOf, loadToRun, plannedRun } = await import('../load.js');
    const { runStudy } = await import('../run-study.js');
    const { noRateReason } = await import('../../study/rate/at-rate.js');
    const { changesFingerprint, reachStudy } = await import('../../study/reach/reach.js');
    const { goalText } = await import('../../study/reach/sentence.js');
    const { SURE_OF_DATE } = await import('../../study/reach/search/setting.js');
    const { identityOf } = await import('../../study/run/identity.js');
    const { plannersUnit } = await import('../../study/unit-of.js');
    const { askedRate } = await import('../../scenario/programme/rates.js');
    const { possibleOf } = await import('../../scenario/changes/possible.js');
    const { seed, by, ordered, budget, atMost, replications } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, model } = await loadToRun(request, interrupt),
      unit = plannersUnit(scenario);
    if (possibleOf(scenario).length === 0)
      throw new UsageError(
        `${lineOf(request.file, 'costs')} costs.changes: expected changes that could be made, got none`,
        'name what could be changed and its price; docs/reach.md shows how',
      );
    const goal = goalOf();
    const asked = { goal, by, ordered, budget, atMost, replications };
    return runStudy<ReachResults, Observation | Seen | number>(request, interrupt, {
      stage:
        `looking for the cheapest changes of ${file} for ${goalText({ goal, rateUnit: unit })}, ` +
        `seed ${seed}`,
      identity: identityOf({
        study: 'reach',
        scenario,
        seed,
        more: { ...asked, 'possible changes': changesFingerprint(scenario) },
      }),
      run: (how) =>
        plannedRun(request.file, () =>
          reachStudy({
            ...{ ...asked, ...how, scenario, file, seed },
            data: dataOf(request.file, scenario),
          }),
        ),
      text: async () => (await import('../../report/terminal/reach.js')).reachTable,
      drawing: async () => {
        const { reachFiles } = await import('../../report/files/reach.js'),
          { markedReach } = await import('../../report/map/marked.js');
        return onMap(reachFiles, scenario, model, markedReach);
      },
      stands: ({ outcome }) => outcome === 'not reached' || outcome === 'not settled',
    });

    function goalOf(): ReachGoal {
      const { date, rate } = request,
        { quantity } = scenario.programme;
      if (date !== undefined) {
        if (quantity === undefined)
          throw new UsageError(
            `${lineOf(request.file, 'programme')} programme: expected a \`quantity\` for --date, got none`,
            'give the number of units, of which one is the last',
          );
        return { kind: 'date', date, sure: SURE_OF_DATE };
      }
      return { kind: 'rate', perDay: perDayOf(rate, unit) };
    }

    function perDayOf(rate: number | undefined, { workingDays }: PlannersUnit): number {
      const reason = noRateReason(scenario),
        { highest } = askedRate(scenario),
        isSaturated = scenario.programme.release.kind === 'saturated',
        isAsked = highest !== null && (rate === undefined || rate / workingDays === highest);
      if (reason !== null && !isSaturated && !isAsked)
        throw new UsageError(
          `${lineOf(request.file, 'programme')} programme: expected one with a \`rate\`, got ${reason}`,
          'write `rate: { per day: 4 }` in its place',
        );
      if (rate !== undefined) return rate / workingDays;
      if (highest !== null) return highest;
      throw new UsageError('--rate: expected the rate to be held, got none', 'for example --rate 4');
    }
  },
});
