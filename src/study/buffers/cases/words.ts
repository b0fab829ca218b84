import { count, exact } from '../../format.js';
import { listed } from '../../lists.js';
import { boundsOf } from '../../statistics/estimate.js';
import type { BufferResults } from '../results.js';
import { toSettle } from '../verdict.js';
import { caseName, rivalsOf } from './names.js';
import type { CasesResult } from './results.js';
import { budgetSentence, isBeyond, targetSentence } from './sentences.js';

type Results = Omit<BufferResults, 'answer' | 'cases'>;
type Answer = BufferResults['answer'];

/** What was found for all cases, in words. @param isReached in the search */
export function casesAnswer(results: Results, over: CasesResult, isReached: boolean): Answer {
  const { goal } = results,
    verdict = verdictIn(results, over, isReached),
    settle = settling(results, over, verdict);
  return {
    verdict,
    sentence:
      goal.kind === 'budget'
        ? budgetSentence(results, over, goal.places, settle)
        : targetSentence(results, over, verdict, settle),
    notes: [howFar(results, over, verdict), ...stillNotes(over), ...alikeNotes(over)],
    toSettle: settle,
  };
}

function verdictIn({ goal }: Results, { cases }: CasesResult, isReached: boolean): Answer['verdict'] {
  if (goal.kind === 'budget') return 'found';
  if (!isReached && cases.some(isBeyond)) return 'out of reach';
  if (cases.some(({ aboveAsked }) => boundsOf(aboveAsked).high < 0)) return 'not reached';
  return cases.every(({ aboveAsked }) => boundsOf(aboveAsked).low >= 0) ? 'reached' : 'not settled';
}

/** Of a budget whether a layout compared may do better by more than the zone; of a target each open case. */
function settling({ zone, goal }: Results, over: CasesResult, verdict: Answer['verdict']): number | null {
  const open =
    goal.kind === 'budget'
      ? rivalsOf(over, goal.places, zone).map(({ worstMore }) => worstMore && toSettle(worstMore, -zone))
      : verdict === 'not settled'
        ? over.cases.map(({ aboveAsked }) => aboveAsked && toSettle(aboveAsked))
        : [];
  const needed = open.filter((n) => n !== null);
  return needed.length === 0 ? null : Math.max(...needed);
}

function howFar({ goal, chosen }: Results, { within }: CasesResult, verdict: Answer['verdict']): string {
  if (verdict === 'out of reach') return 'No layout can give more than arithmetic allows.';
  if (within === null || verdict === 'not reached')
    return (
      'Not every layout was tried: there may be a better one, or one with fewer places. What is shipped ' +
      'without limits is no bound, as more room can cost throughput.'
    );
  const all = within === 1 ? 'The one layout with' : `All ${exact(within)} layouts with`,
    tried = `${within === 1 ? 'was' : 'were'} tried in every case.`;
  if (goal.kind === 'budget') return `${all} up to ${count(goal.places, 'place')} ${tried}`;
  return within === 0
    ? 'There can be no fewer.'
    : `${all} fewer than ${count(chosen.total, 'place')} ${tried}`;
}

function stillNotes({ cases, layouts }: CasesResult): string[] {
  const still = cases.filter(({ unlimited }) => unlimited === 0),
    ships = (c: number): boolean => layouts.some((layout) => (layout.cases[c]?.rate ?? 0) > 0),
    helpless = cases.filter(({ best, unlimited }, c) => best !== null && unlimited > 0 && !ships(c));
  return [
    ...(still.length === 0
      ? []
      : [
          `No places help in ${listed(still.map(caseName), 'and')}: nothing is shipped there without ` +
            'limits either.',
        ]),
    ...(helpless.length === 0
      ? []
      : [`No layout found for the budget ships anything in ${listed(helpless.map(caseName), 'and')}.`]),
  ];
}

function alikeNotes({ cases }: CasesResult): string[] {
  const alike = cases.filter(({ isAsBase }) => isAsBase).map(caseName);
  return alike.length === 0
    ? []
    : [
        `${listed(alike, 'and')} ${alike.length === 1 ? 'ships' : 'ship'} the same as the scenario as it ` +
          'is with every layout compared.',
      ];
}
