import { capital, count, exact, interval, number, signed, withInterval } from '../../../study/format.js';
import { each, rateText } from '../../../study/planners-unit.js';
import type { ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced, moneyText } from '../../../study/reach/sentence.js';
import { filled } from '../../columns.js';
import { eachShift } from '../../constraint.js';
import { whole } from '../../first/first.js';
import { costs, dates, worth } from '../../first/reach/money.js';
import { reachFirst } from '../../first/reach/reach.js';
import {
  hasUnpriced,
  inPlanners,
  type StepVerdict,
  stepName,
  stepVerdict,
  triedOnWay,
  whatIs,
} from '../../first/reach/told.js';
import { constraintFindings, constraintTables, lossesTold } from '../constraint.js';
import { type Fact, noteOf, origin, type PageContent } from '../page.js';
import { guessesTable, inputsNote, SAME_BASE, sourcesElsewhere } from '../rests.js';
import { decidedTable, harmTable, searchText } from './reach-search.js';
import { changesTable, mostTable, unpricedTable } from './reach-sets.js';
import { effectsTable, stepsTable, stopsThen } from './reach-steps.js';

/** What to buy and how sure that is; then the way, the most for each sum, and all that was tried. */
export function reachPage(results: ReachResults): PageContent {
  const { scenario, answer, constraint, replications, level, skipped } = results,
    at = triedOnWay(results);
  return {
    scenario: scenario.name,
    first: reachFirst(results),
    losses: lossesTold(constraint, at),
    inFull: `${capital(eachShift(answer.sentence, constraint))}${/[.!?]$/.test(answer.sentence) ? '' : '.'}`,
    findings: [...results.steps.slice(1).map(stepFinding(results)), ...constraintFindings(constraint, at)],
    costsAndDates: [whole(dates(results)), ...costs(results), ...worth(results)].filter(
      (each) => each !== '',
    ),
    values: [],
    assumptions: [
      ...noteOf(scenario),
      sourcesElsewhere(scenario.file),
      ...meaning(results),
      `${searchText(results)}.`,
      whenThere(results),
      (isPriced(results) ? 'Prices of changes, their lead times, ' : 'Lead times of changes, ') +
        'and which exclude or require others, are as the scenario gives them; wages, trucks, carriers ' +
        'and floor are in the cost of a unit.' +
        (hasUnpriced(results) ? ' Changes without a price are in no set that was chosen.' : ''),
      'One change after the other is tried by what it brings on the way; in another order each may bring ' +
        'more or less.',
      ...(skipped.length === 0
        ? []
        : skipped.map(({ what, why }) => `${capital(what)} was left out: ${why}.`)),
      inputsNote(level, replications),
      SAME_BASE,
    ],
    facts: origin(results, facts(results)),
    tables: filled([
      stepsTable(results),
      effectsTable(results),
      mostTable(results),
      changesTable(results),
      unpricedTable(results),
      decidedTable(results),
      harmTable(results),
      ...constraintTables(constraint, at),
      guessesTable(results.weakest, capital(at)),
    ]),
    more: 'All of these numbers are in results.json and the CSV files beside this page.',
  };
}

/** A step as it can be signed: what is bought, for how much, by when, what it brought. */
const stepFinding =
  (results: ReachResults) =>
  (step: StepResult, i: number): string => {
    const { made, gain, price } = step,
      { currency, rateUnit, possible, ordered } = results,
      what = whatIs(made?.name ?? '', possible);
    if (made === null || gain === null) return '';
    return (
      `${i + 1}. ${stepName(step)}${what === '' ? '' : ` (${what})`}` +
      (!isPriced(results)
        ? ''
        : price === null
          ? ', at a price that is not given'
          : `, ${moneyText(price, currency)}`) +
      (ordered !== null
        ? made.from === null
          ? ', there from the first day on'
          : `, there from ${made.from}`
        : made.orderBy === null
          ? ''
          : `, to be ordered by ${made.orderBy}`) +
      `: ${withInterval(inPlanners(step.throughput, results), each(rateUnit))}, ` +
      `${GAINS[stepVerdict(step) ?? 'no gain seen']} the step before, ${signed(inPlanners(gain, results))} ` +
      `(${interval(gain, rateUnit.workingDays)}). ` +
      `What stops it then: ${stopsThen(step, results)}.`
    );
  };

const GAINS: Readonly<Record<StepVerdict, string>> = {
  'brings more': 'more than',
  'no gain seen': 'not surely more than',
  'ships less': 'less than',
};

/** What is asked of a set, in full. */
function meaning({ goal, counted }: ReachResults): string[] {
  if (goal.kind === 'date')
    return [
      `A set does what is asked where surely at least ${exact(Math.round(100 * goal.sure))} in 100 builds ` +
        `have the last unit out by ${goal.date}.`,
    ];
  return [
    'A rate holds where surely at least half of the builds ship what is asked, to within 2 %, and as much ' +
      'is shipped in the long run when more is asked. So the mean may lie a little below the rate.' +
      (counted === null ? '' : ` Judged are the weeks from ${counted.from} to ${counted.to}.`),
  ];
}

function whenThere({ ordered }: ReachResults): string {
  return ordered === null
    ? 'Every change is taken to be there from the first day on; the table of steps says by when each is to ' +
        'be ordered for that.'
    : `All changes are ordered on ${ordered}; the table of steps says from when on each is there.`;
}

function facts(results: ReachResults): Fact[] {
  const { goal, rateUnit, budget, atMost, ordered, by, currency, replications, search } = results;
  return [
    ['Asked', goal.kind === 'rate' ? rateText(goal.perDay, rateUnit) : `last unit out by ${goal.date}`],
    ...(by === null ? [] : [['Held from', by] as const]),
    ...(ordered === null ? [] : [['Ordered on', ordered] as const]),
    ['Money', budget === null ? 'no limit' : `at most ${moneyText(budget, currency)}`],
    ['Changes', atMost === null ? 'no limit' : `at most ${exact(atMost)}`],
    [
      'Replications',
      `${count(replications, 'fresh build')} of each step; ${exact(search.replications)} in all`,
    ],
    ['Does not matter', `a difference below ${number(100 * search.zone)} %`],
  ];
}
