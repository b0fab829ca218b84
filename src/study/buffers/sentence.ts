import { bounds, count, intervalAndCount, mean, number, signed } from '../format.js';
import { defined } from '../lists.js';
import { sumOf } from '../statistics/sums.js';
import type { BufferResults } from './results.js';
import { isSameLayout } from './spots.js';

type Results = Omit<BufferResults, 'answer'>;

/** The answer, in one or two sentences that begin with it. */
export function buffersSentence(results: Results, verdict: BufferResults['answer']['verdict']): string {
  return results.goal.kind === 'budget'
    ? budgetSentence(results, results.goal.places)
    : targetSentence(results, results.goal.rate, verdict);
}

/** What is enough first, what more would bring after it. */
function budgetSentence(results: Results, budget: number): string {
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
    `${isSettled ? '' : `; more replications would tell whether that is more than ${matters}`}.`
  );
}

function targetSentence(results: Results, rate: number, verdict: BufferResults['answer']['verdict']): string {
  const { chosen, unit, ample, spots } = results,
    asked = `${number(rate)} ${unit}`,
    places = count(chosen.total, 'place'),
    given = `${chosen.total === 1 ? 'it gives' : 'they give'} ${rateOf(results)}, ${againstPresent(results)}`;
  switch (verdict) {
    case 'out of reach':
      return (
        `${asked} are out of reach of waiting places: ${defined(ample?.placesEach)} or more in each of ` +
        `${count(spots.length, 'spot')} give ${rateOf(results)}.`
      );
    case 'reached':
      return `${asked} take ${places}: ${given}.`;
    case 'not reached':
      return `${asked} are not reached with the ${places} found: ${given}.`;
    default:
      return (
        `Whether ${places} are enough for ${asked} is not settled: ${given}; ` +
        'more replications are needed.'
      );
  }
}

const rateOf = ({ chosen, unit }: Results): string =>
  `${mean(chosen.rate)} ${unit} (${intervalAndCount(chosen.rate)})`;

const againstPresent = ({ chosen, present, gain }: Results): string =>
  isSameLayout(chosen.places, present.places)
    ? 'which is the layout as it is'
    : `${signed(gain.difference)} (${bounds(gain.difference)}) ` +
      `against the ${present.total} of the layout as it is`;
