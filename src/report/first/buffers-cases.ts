import { askedText, shareText } from '../../study/buffers/asked.js';
import { caseName, layoutFor, lostOf, orElseNames, weakestName } from '../../study/buffers/cases/names.js';
import type { CaseResult, CasesResult } from '../../study/buffers/cases/results.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { count, exact, number } from '../../study/format.js';
import { defined, listed } from '../../study/lists.js';
import { boundsOf, type Estimate, isSame, mapped } from '../../study/statistics/estimate.js';
import { WITH_THEM } from '../constraint.js';
import { figure } from './figures.js';
import {
  about,
  ends,
  type FirstScreen,
  gain,
  gainBetween,
  how,
  INPUTS,
  type Line,
  NO_LINE,
  sentences,
  together,
} from './first.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';
import { datesOf, placesLine } from './places.js';

/** Of one layout for several cases: what it loses in the weakest of them. */
export function casesFirst(results: BufferResults, over: CasesResult): FirstScreen {
  const { scenario, answer, chosen, goal, constraint } = results,
    places = count(chosen.total, 'waiting place'),
    its = defined(over.layouts[0]),
    runs = answer.toSettle === null ? 'more' : `about ${exact(answer.toSettle)}`,
    many = count(over.cases.length, 'case'),
    { brief, more } = placesLine(
      results,
      goal.kind === 'budget' ? over.isSettled : answer.verdict !== 'not settled',
      answer.toSettle,
    );
  return {
    about: about(scenario),
    question:
      goal.kind === 'budget'
        ? `Where should up to ${count(goal.places, 'waiting place')} go, for ${many} at once?`
        : `How few waiting places does it need for ${askedIn(results)} in each of ${many}?`,
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
    stops: stopsLine(constraint, { of: `${WITH_THEM}, all else as it is` }),
    toDo: { brief, more },
    next: {
      what: 'What else the cases change',
      command: `rateproof compare ${scenario.file} ${over.file}`,
    },
    when: datesOf(results),
    rests: weakestLine(results.weakest, WITH_THEM),
    besides: sentences(
      alone(over),
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
function sureOfBudget(results: BufferResults, over: CasesResult): Line {
  const its = defined(over.layouts[0]),
    orElse = orElseNames(its, over),
    today = layoutFor(over, 'present');
  return {
    brief: sentences(
      `They lose ${lostBetween(its.worst)} in ${weakestName(its, over)} ` +
        `(${how(results.level, its.worst.n)}).`,
      orElse.length === 0 ? '' : `The weakest case may also be ${listed(orElse)}.`,
    ),
    more: sentences(
      `Lost of ${lostOf(over)}.`,
      today === undefined || today === its || today.worstMore === null
        ? ''
        : `Today’s ${exact(today.total)} ${lose(today.worstMore)} in theirs, ${weakestName(today, over)}.`,
      together(results.level),
    ),
  };
}

/** `between 0.1 and 1.6 %`. */
const lostBetween = (loss: Estimate): string =>
  isSame(loss) ? `${number(100 * loss.mean)} %` : `${ends(loss, 100)} %`;

/** `lose 3.1 % more (1.2 to 5)`. */
function lose(more: Estimate): string {
  return `lose ${gain(
    mapped(more, (share) => 100 * share),
    ' %',
  )}`;
}

/** Where what is asked is least exceeded, or missed most. */
function sureOfTarget({ level, unit }: BufferResults, { cases }: CasesResult): Line {
  const [first, ...others] = cases.filter(
      (each): each is CaseResult & { readonly aboveAsked: Estimate } => each.aboveAsked !== null,
    ),
    a = unit.replace(/^units/, '');
  if (first === undefined) return NO_LINE;
  const { aboveAsked, ...least } = others.reduce(
    (most, each) =>
      each.aboveAsked.mean / (each.asked ?? 1) < most.aboveAsked.mean / (most.asked ?? 1) ? each : most,
    first,
  );
  return {
    brief:
      `Least in ${caseName(least)}: ${gainBetween(aboveAsked, a)} than is asked there ` +
      `(${how(level, aboveAsked.n)}).`,
    more: together(level),
  };
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
