import { bounds, count, exact, intervalAndCount, mean, number, signed } from '../../format.js';
import { defined, listed } from '../../lists.js';
import { boundsOf } from '../../statistics/estimate.js';
import { askedText, shareText } from '../asked.js';
import type { BufferResults } from '../results.js';
import {
  caseName,
  compared,
  layoutFor,
  lostOf,
  orElseNames,
  percentOf,
  rivalsOf,
  weakestName,
} from './names.js';
import type { CaseLayout, CaseResult, CasesResult } from './results.js';

type Results = Omit<BufferResults, 'answer' | 'cases'>;
type Verdict = BufferResults['answer']['verdict'];

/** To nine digits what is asked is more than arithmetic allows. */
export const isBeyond = ({ bound, asked }: CaseResult): boolean =>
  bound !== null && asked !== null && bound.rate * (1 + 1e-9) < asked;

/** What is lost in the weakest case, against what a single case would take, and whether that is settled. */
export function budgetSentence(
  { zone }: Results,
  over: CasesResult,
  budget: number,
  toSettle: number | null,
): string {
  const chosen = defined(over.layouts[0]),
    verb = chosen.total === 1 ? 'loses' : 'lose',
    orElse = orElseNames(chosen, over);
  return [
    `${count(chosen.total, 'place')} ${verb} ${mean(chosen.worst, 100)} % ` +
      `(${intervalAndCount(percentOf(chosen.worst))}) in the weakest of ` +
      `${count(over.cases.length, 'case')}, ${weakestName(chosen, over)}, of ${lostOf(over)}.`,
    ...(orElse.length === 0 ? [] : [`By the means that is the weakest; it may be ${listed(orElse)}.`]),
    aloneText(over),
    ...moreText(over),
    ...meanText(over, zone),
    rivalsText(over, budget, zone, toSettle),
  ].join(' ');
}

/** What the scenario as it is would take alone, and what that loses more in its weakest case. */
function aloneText(over: CasesResult): string {
  const alone = over.layouts[over.cases[0]?.alone ?? 0];
  if (alone === undefined || alone.worstMore === null)
    return 'The scenario as it is would take the same alone.';
  const one = alone.total === 1;
  return (
    `The ${count(alone.total, 'place')} that the scenario as it is would take alone ` +
    `${compared(one ? 'loses' : 'lose', alone.worstMore)} in ${one ? 'its' : 'their'} weakest case, ` +
    `${weakestName(alone, over)}.`
  );
}

/** What the best found for the whole budget would lose. */
function moreText(over: CasesResult): string[] {
  const best = layoutFor(over, 'best');
  if (best === undefined || best.worstMore === null) return [];
  return [
    `The best found, ${count(best.total, 'place')}, would ${compared('lose', best.worstMore)} in ` +
      `the weakest case, ${weakestName(best, over)}.`,
  ];
}

/** Where the best mean is had by another layout: what it gains there, and what it costs. */
function meanText(over: CasesResult, zone: number): string[] {
  const forMean = layoutFor(over, 'mean');
  if (forMean === undefined || forMean.meanMore === null || forMean.worstMore === null) return [];
  return [
    `By the mean over the cases alone it would be ${count(forMean.total, 'place')}, the fewest found ` +
      `within ${number(100 * zone)} % of the best mean: they ` +
      `${compared('lose', forMean.meanMore)} in the mean, and ${compared('', forMean.worstMore).trim()} in ` +
      `their weakest case, ${weakestName(forMean, over)}.`,
  ];
}

/** Whether another layout that was compared may do better by more than what does not matter. */
function rivalsText(over: CasesResult, budget: number, zone: number, toSettle: number | null): string {
  const rivals = rivalsOf(over, budget, zone),
    matters = `${number(100 * zone)} %`;
  if (over.layouts.length === 1) return 'No other layout came into question.';
  if (rivals.length === 0)
    return `No other layout compared does better in its weakest case by more than ${matters}.`;
  const surely = rivals.filter(({ worstMore }) => boundsOf(worstMore).high < -zone),
    named = (layouts: readonly CaseLayout[]): string =>
      `${layouts.length === 1 ? 'the layout' : 'one of the layouts'} with ${listed(layouts.map(placesText))}`;
  return surely.length > 0
    ? `More is to be had: ${named(surely)} surely does better there by more than ${matters}.`
    : `Whether ${named(rivals)} does better in its weakest case by more than ${matters} is not settled; ` +
        `${moreRuns(toSettle)} would tell.`;
}

/** `12 places (8, 4)`; by spot would be too long for many spots. */
const placesText = ({ places, total }: CaseLayout): string =>
  `${count(total, 'place')}${places.length > 6 ? '' : ` (${places.join(', ')})`}`;

/** Whether a target is reached in every case, by how much, and where not. */
export function targetSentence(
  results: Results,
  over: CasesResult,
  verdict: Verdict,
  toSettle: number | null,
): string {
  const { goal, unit, chosen } = results,
    places = count(chosen.total, 'place'),
    one = chosen.total === 1,
    asked = goal.kind === 'target' && goal.relative !== null ? shareText(goal.relative) : askedText(results),
    all = `in all ${exact(over.cases.length)} cases`;
  const margins = (which: (bounds: { readonly low: number; readonly high: number }) => boolean): string =>
    listed(
      over.cases.flatMap((each) =>
        each.aboveAsked !== null && which(boundsOf(each.aboveAsked))
          ? [`${caseName(each)} ${signed(each.aboveAsked)} (${bounds(each.aboveAsked)})`]
          : [],
      ),
      'and',
    );
  switch (verdict) {
    case 'out of reach':
      return (
        `${asked} are out of reach of waiting places: ` +
        `${listed(over.cases.filter(isBeyond).map(beyond), 'and')}.`
      );
    case 'reached':
      return (
        `${places} ${one ? 'reaches' : 'reach'} ${asked} ${all}. Against what is asked, ${unit}: ` +
        `${margins(() => true)}. ${aloneText(over)}`
      );
    case 'not reached':
      return (
        `${asked} are not reached ${all}: the ${places} found ${one ? 'falls' : 'fall'} short, ${unit}, ` +
        `in ${margins(({ high }) => high < 0)}.`
      );
    default:
      return (
        `Whether ${places} ${one ? 'is' : 'are'} enough for ${asked} ${all} is not settled. Open, ${unit} ` +
        `against what is asked: ${margins(({ low, high }) => low < 0 && high >= 0)}; ` +
        `${moreRuns(toSettle)} would probably settle it. ${aloneText(over)}`
      );
  }
}

const beyond = (each: CaseResult): string =>
  `arithmetic allows ${number(each.bound?.rate ?? 0)} (${each.bound?.name ?? ''}) in ${caseName(each)}`;

const moreRuns = (toSettle: number | null): string =>
  toSettle === null ? 'more replications' : `about ${exact(toSettle)} replications`;
