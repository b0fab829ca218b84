import { bounds, count, exact, intervalAndCount, mean, number, signed } from '../format.js';
import { sumOf } from '../statistics/sums.js';
import { askedText } from './asked.js';
import type { BufferResults } from './results.js';
import { isSameLayout } from './spots.js';

type Results = Omit<BufferResults, 'answer'>;

/** The answer, in one or two sentences that begin with it. */
export function buffersSentence(
  results: Results,
  verdict: BufferResults['answer']['verdict'],
  toSettle: number | null,
): string {
  return results.goal.kind === 'budget'
    ? budgetSentence(results, results.goal.places, toSettle)
    : targetSentence(results, verdict, toSettle);
}

/** What is enough first, what more would bring after it. */
function budgetSentence(results: Results, budget: number, toSettle: number | null): string {
  const { chosen, best, more, zone, spots } = results,
    { total } = chosen,
    given = `${rateOf(results)}, ${againstPresent(results)}`,
    matters = `${number(100 * zone)} %`;
  if (best === null || more === null) {
    const canBeFewer = total > sumOf(spots, ({ least }) => least);
    return (
      `${count(total, 'place')} give${total === 1 ? 's' : ''} ${given}.` +
      (canBeFewer ? ` No layout found with fewer comes within ${matters} of it.` : '')
    );
  }
  const { difference, isSettled } = more,
    all = best.total < budget ? `${best.total}, the best found for up to ${budget}` : String(best.total),
    [does, gives] = total === 1 ? ['does', 'it gives'] : ['do', 'they give'];
  return (
    `${count(total, 'place')} ${does} as well as ${all}, to within ${matters}` +
    `${isSettled ? '' : ' by the means alone'}: ${gives} ${given}. ` +
    `${more.places} more would bring ${signed(difference)} (${bounds(difference)})` +
    `${isSettled ? '' : `; ${moreOf(toSettle)} would tell whether that is more than ${matters}`}.`
  );
}

function targetSentence(
  results: Results,
  verdict: BufferResults['answer']['verdict'],
  toSettle: number | null,
): string {
  const { chosen, unit, unlimited, spots, bound, aboveAsked } = results,
    asked = askedText(results),
    places = count(chosen.total, 'place'),
    one = chosen.total === 1,
    more =
      aboveAsked === null
        ? ''
        : `, ${signed(aboveAsked.difference)} (${bounds(aboveAsked.difference)}) against what is asked`,
    figures = `${rateOf(results)}${more}, ${againstPresent(results)}`,
    given = `${one ? 'it gives' : 'they give'} ${figures}`;
  switch (verdict) {
    case 'out of reach':
      return (
        `${asked} are out of reach of waiting places: arithmetic allows ${number(bound?.rate ?? 0)} ` +
        `(${bound?.name ?? ''}), unlimited places in ${count(spots.length, 'spot')} give ` +
        `${mean(unlimited.rate)} ${unit} (${intervalAndCount(unlimited.rate)}).`
      );
    case 'reached':
      return `${places} ${one ? 'reaches' : 'reach'} ${asked}: ${given}.`;
    case 'not reached':
      return `${asked} are not reached: the ${places} found ${one ? 'gives' : 'give'} ${figures}.`;
    default:
      return (
        `Whether ${places} ${one ? 'is' : 'are'} enough for ${asked} is not settled: ${given}; ` +
        `${moreOf(toSettle)} would probably settle it.`
      );
  }
}

/** The search may then come to another layout. */
const moreOf = (toSettle: number | null): string =>
  toSettle === null ? 'more replications' : `about ${exact(toSettle)} replications`;

const rateOf = ({ chosen, unit }: Results): string =>
  `${mean(chosen.rate)} ${unit} (${intervalAndCount(chosen.rate)})`;

const againstPresent = ({ chosen, present, gain }: Results): string =>
  isSameLayout(chosen.places, present.places)
    ? 'which is the layout as it is'
    : `${signed(gain.difference)} (${bounds(gain.difference)}) ` +
      `against the ${present.total} of the layout as it is`;
