import { askedText, shareText } from '../../study/buffers/asked.js';
import {
  caseName,
  layoutFor,
  listed,
  lostOf,
  orElseNames,
  weakestName,
} from '../../study/buffers/cases/names.js';
import type { CaseResult, CasesResult } from '../../study/buffers/cases/results.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { count, exact, number } from '../../study/format.js';
import { defined } from '../../study/lists.js';
import { boundsOf, type Estimate, isSame, mapped } from '../../study/statistics/estimate.js';
import { WITH_THEM } from '../constraint.js';
import { figure } from './figures.js';
import { asking, between, type FirstScreen, gain, howTogether, INPUTS, sentences, whyText } from './first.js';
import { dates, floor, placesText } from './places.js';
import { weakestText } from './weakest.js';

/** Of one layout for several cases: what it loses in the weakest of them. */
export function casesFirst(results: BufferResults, over: CasesResult): FirstScreen {
  const { scenario, answer, chosen, goal, constraint } = results,
    places = count(chosen.total, 'waiting place'),
    its = defined(over.layouts[0]),
    runs = answer.toSettle === null ? 'more' : `about ${exact(answer.toSettle)}`,
    each = `in each of ${count(over.cases.length, 'case')}`;
  return {
    question: asking(
      scenario,
      goal.kind === 'budget'
        ? `Where does “${scenario.name}” best put up to ${count(goal.places, 'waiting place')}, for ` +
            `${count(over.cases.length, 'case')} at once?`
        : `How few waiting places does “${scenario.name}” need for ${askedIn(results)} ${each}?`,
    ),
    answer:
      goal.kind === 'budget'
        ? `${places}: in the weakest case ${lostText(its.worst)}.`
        : {
            found: `${places}.`,
            reached: over.within === null ? `${places} found; fewer may do.` : `${places}.`,
            'not settled': `About ${places}; ${runs} runs would settle it.`,
            'not reached': 'Not reached in every case with the layouts tried.',
            'out of reach': 'Out of reach, however many places.',
          }[answer.verdict],
    sure: goal.kind === 'budget' ? sureOfBudget(results, over) : sureOfTarget(results, over),
    why: constraint === null ? null : whyText(constraint, `${WITH_THEM}, all else as it is,`),
    toDo: placesText(results, goal.kind === 'budget' ? over.isSettled : answer.verdict !== 'not settled'),
    next: {
      what: 'What else the cases change',
      command: `rateproof compare ${scenario.file} ${over.file}`,
    },
    whenAndCost: [...dates(results), alone(over), ...floor(results)],
    rests: weakestText(results.weakest, undefined, ` ${WITH_THEM}`),
    besides: sentences(
      restsText(results, over),
      'Whether there is floor space is not known, nor how likely each case is.',
      INPUTS,
    ),
    picture: { title: 'What is lost in each case', more: '' },
  };
}

const askedIn = (results: BufferResults): string =>
  results.goal.kind === 'target' && results.goal.relative !== null
    ? shareText(results.goal.relative)
    : askedText(results);

/** `2.3 % is lost`; what may be nothing says so. */
const lostText = (loss: Estimate): string =>
  boundsOf(loss).high <= 0.0005 ? 'nothing is lost' : `${figure(loss, 100)} % is lost`;

/** How much in the weakest case, which that is, and what today's layout does. */
function sureOfBudget(results: BufferResults, over: CasesResult): string {
  const its = defined(over.layouts[0]),
    orElse = orElseNames(its, over),
    today = layoutFor(over, 'present');
  return sentences(
    `In ${weakestName(its, over)} they lose ${lostBetween(its.worst)} of ${lostOf(over)} ` +
      `(${howTogether(its.worst, results.level)}).`,
    orElse.length === 0 ? '' : `The weakest case may also be ${listed(orElse)}.`,
    today === undefined || today === its || today.worstMore === null
      ? ''
      : `Today’s ${exact(today.total)} ${lose(today.worstMore)} in theirs, ${weakestName(today, over)}.`,
  );
}

/** `between 0.1 and 1.6 %`. */
const lostBetween = (loss: Estimate): string =>
  isSame(loss) ? `${number(100 * loss.mean)} %` : `${between(loss, 100)} %`;

/** `lose 3.1 % more (1.2 to 5)`. */
function lose(more: Estimate): string {
  return `lose ${gain(
    mapped(more, (share) => 100 * share),
    ' %',
  )}`;
}

/** Where what is asked is least exceeded, or missed most. */
function sureOfTarget({ level, unit }: BufferResults, { cases }: CasesResult): string {
  const [first, ...others] = cases.filter(
      (each): each is CaseResult & { readonly aboveAsked: Estimate } => each.aboveAsked !== null,
    ),
    a = unit.replace(/^units/, '');
  if (first === undefined) return '';
  const least = others.reduce(
    (most, each) =>
      each.aboveAsked.mean / (each.asked ?? 1) < most.aboveAsked.mean / (most.asked ?? 1) ? each : most,
    first,
  );
  return (
    `Least in ${caseName(least)}: ${gain(least.aboveAsked, a)} than is asked there ` +
    `(${howTogether(least.aboveAsked, level)}).`
  );
}

/** What single cases would take, against what is built for all. */
function alone({ cases, layouts }: CasesResult): string {
  const takes = cases.map((each) => `${exact(layouts[each.alone]?.total ?? 0)} for ${caseName(each)}`);
  return `Places that would be taken for one case alone: ${listed(takes, 'and')}.`;
}

function restsText({ zone, goal }: BufferResults, over: CasesResult): string {
  const matters = `${number(100 * zone)} %`,
    tried =
      over.within === null
        ? 'Found by steps; nothing proves it the best.'
        : `All layouts ${goal.kind === 'budget' ? 'within the budget' : 'with fewer places'} were tried in ` +
          'every case.';
  if (goal.kind !== 'budget') return tried;
  return (
    `${tried} ` +
    (over.isSettled
      ? `None of the others compared does better in its weakest case by more than ${matters}.`
      : `Whether another one compared does better in its weakest case by more than ${matters} is not ` +
        'settled.')
  );
}
