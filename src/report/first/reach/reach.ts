import { inWords } from '../../../study/answer/answer.js';
import { count, exact } from '../../../study/format.js';
import { each, inUnit, rateText } from '../../../study/planners-unit.js';
import type { ReachResults } from '../../../study/reach/results.js';
import { isPriced, madeOnTheWay, moneyText } from '../../../study/reach/sentence.js';
import { about, dateText, type FirstScreen, INPUTS, roughly, sentences } from '../first.js';
import { weakestLine } from '../lines/weakest.js';
import { costs, dates, worth } from './money.js';
import { stops } from './stops.js';
import { sure } from './sure.js';
import { toDo } from './to-do.js';
import {
  askedWorking,
  inPlanners,
  isLeast,
  lastOf,
  moneyOf,
  outBy,
  sameCommand,
  timesIn,
  withThem,
} from './told.js';

/** What to buy, for how much, how sure that is, and what stops the build before and after. */
export function reachFirst(results: ReachResults): FirstScreen {
  const { scenario, steps, weakest } = results,
    { brief, more } = toDo(results);
  return {
    about: about(scenario),
    question: question(results),
    answer: answer(results),
    sure: sure(results),
    stops: stops(results),
    toDo: { brief, more: sentences(more, ...costs(results), ...worth(results)) },
    when: dates(results),
    rests:
      weakest === null
        ? { brief: 'Which guess it hangs on most was not tried.', more: '' }
        : weakestLine(weakest, steps.length > 1 ? withThem(results) : ''),
    next: next(results),
    besides: sentences(
      isPriced(results)
        ? 'Prices and lead times are those of the scenario.'
        : 'Lead times are those of the scenario.',
      INPUTS,
    ),
    picture: picture(results),
  };
}

function question(results: ReachResults): string {
  const { goal, budget, atMost, ordered, by, currency } = results;
  return `${[
    'What does it take to ' +
      (goal.kind === 'rate'
        ? `ship ${askedWorking(goal.perDay, results)}`
        : `have its last unit out by ${dateText(goal.date)}`),
    isPriced(results) ? 'for the least money' : 'with the fewest changes',
    ...(budget === null ? [] : [`with at most ${moneyText(budget, currency)}`]),
    ...(atMost === null ? [] : [`in at most ${count(atMost, 'change')}`]),
    ...(ordered === null ? [] : [`ordered on ${dateText(ordered)}`]),
    ...(by === null ? [] : [`in time for ${dateText(by)}`]),
  ].join(', ')}?`;
}

/** In as few words as there are: names of changes may be long, and stand below. */
function answer(results: ReachResults): string {
  const { outcome, steps, search } = results,
    last = lastOf(results),
    many = timesIn(madeOnTheWay(results)),
    changes = `${inWords(many)} ${many === 1 ? 'change' : 'changes'}`,
    money = last.money === null ? '' : moneyOf(last, results),
    most = isLeast(results) ? '' : 'at most ';
  switch (outcome) {
    case 'holds already':
      return 'Yes, as it is: nothing to buy.';
    case 'reached':
      return money === '' ? `Yes, with ${most}${changes}.` : `Yes, for ${most}${money}: ${changes}.`;
    case 'not settled':
      if (steps.length === 1) return 'Not settled: it may do as it is.';
      return money === ''
        ? `Not settled: ${changes} may do.`
        : `Not settled: ${money} may do, in ${changes}.`;
    case 'not reached':
      return `${search.isProven ? 'No.' : 'No set tried does.'} ${farthest(results)}.`;
  }
}

/** How far the set goes that goes farthest. */
function farthest(results: ReachResults): string {
  const { goal, rateUnit, steps } = results,
    last = lastOf(results),
    rate = inPlanners(last.throughput, results);
  if (goal.kind === 'date') {
    const out = outBy(last, goal.sure);
    return out === null || out <= goal.date
      ? `Too few builds are out by ${dateText(goal.date)}`
      : `The earliest found is ${dateText(out)}`;
  }
  const asked = inUnit(goal.perDay, rateUnit),
    most = `${roughly(rate, asked)} ${each(rateUnit)}`;
  if (rate.mean >= asked) return `Too few builds ship ${rateText(goal.perDay, rateUnit)}`;
  if (steps.length === 1) return `It ships ${most} as it is, and nothing brings enough`;
  return `It goes no further than ${most}, not ${exact(asked)}`;
}

/** The next that a planner would ask. */
function next(results: ReachResults): FirstScreen['next'] {
  const { outcome, goal, replications, scenario } = results;
  if (outcome === 'not settled')
    return {
      what: 'More builds may settle it',
      command: sameCommand(results, { replications: 4 * replications }),
    };
  if (outcome === 'holds already' && goal.kind === 'rate')
    return { what: 'How much more it would hold', command: `rateproof rate ${scenario.file}` };
  if (outcome === 'reached' && goal.kind === 'rate')
    return { what: 'What a tenth more would take', command: sameCommand(results, { times: 1.1 }) };
  return { what: 'What else could be changed', command: `rateproof reliefs ${scenario.file}` };
}

/** Of the picture that comes first: the way, else the frontier, else what was tried. */
function picture({ steps, frontier, goal, possible }: ReachResults): FirstScreen['picture'] {
  const by = isPriced({ possible }) ? 'for each sum of money' : 'for each number of changes',
    more = 'Dashed: what is asked; grey: within 2 % of it. The scale does not begin at 0.';
  if (steps.length > 1)
    return goal.kind === 'rate'
      ? { title: 'What is shipped after each step', more }
      : { title: 'When the last unit is out after each step', more: 'Dashed: the day asked.' };
  if (frontier.length > 1)
    return goal.kind === 'rate'
      ? { title: `The most that was found ${by}`, more }
      : { title: `The earliest that was found ${by}`, more: '' };
  return { title: 'What was looked at', more: '' };
}
