import { bounds, count, exact, mean, number, signed } from '../format.js';
import { negated } from '../statistics/estimate.js';
import type { BufferResults } from './results.js';

type Results = Omit<BufferResults, 'answer'>;

/**
 * What the answer rests on: whether all layouts were tried, and if not, what is known to be the most; and a
 * layout with limits that ships more than none.
 */
export function buffersNotes(results: Results, verdict: BufferResults['answer']['verdict']): string[] {
  return [howFar(results, verdict), ...exceededNote(results)];
}

function howFar(results: Results, verdict: BufferResults['answer']['verdict']): string {
  const { goal, search, chosen } = results;
  if (verdict === 'out of reach') return 'No layout can give more than arithmetic allows.';
  if (goal.kind === 'budget' && search.within !== null)
    return search.within === 1
      ? `There is one layout with up to ${count(goal.places, 'place')}.`
      : `All ${exact(search.within)} layouts with up to ${count(goal.places, 'place')} were tried.`;
  const gap = `${unlimitedText(results)}${boundText(results)}`;
  if (goal.kind === 'target' && search.fewer !== null && verdict !== 'not reached')
    return search.fewer === 0
      ? 'There can be no fewer.'
      : `${search.fewer === 1 ? 'The one layout' : `All ${exact(search.fewer)} layouts`} with fewer than ` +
          `${count(chosen.total, 'place')} ${search.fewer === 1 ? 'was' : 'were'} tried.`;
  return goal.kind === 'budget'
    ? `Not every layout was tried: there may be a better one, or one with fewer places. ${gap}`
    : verdict === 'not reached'
      ? `Not every layout was tried. ${gap}`
      : `Not every layout was tried: there may be one with fewer places. ${gap}`;
}

const unlimitedText = ({ unlimited, unit }: Results): string =>
  `Without limits ${mean(unlimited.rate)} ${unit} are shipped, ` +
  `${signed(negated(unlimited.behind.difference))} (${bounds(negated(unlimited.behind.difference))})`;

const boundText = ({ bound, chosen, unlimited }: Results): string =>
  '; no bound, as more room can cost throughput.' +
  (bound === null || bound.rate < Math.max(chosen.rate.mean, unlimited.rate.mean)
    ? ''
    : ` Arithmetic allows at most ${number(bound.rate)} (${bound.name}).`);

function exceededNote({ unlimited: { exceeded }, unit }: Results): string[] {
  if (exceeded === null) return [];
  const { total, rate, more } = exceeded;
  return [
    `No limit is not the most here: ${count(total, 'place')} ${total === 1 ? 'ships' : 'ship'} ` +
      `${mean(rate)} ${unit}, ${signed(more.difference)} (${bounds(more.difference)}) against no limit.`,
  ];
}
