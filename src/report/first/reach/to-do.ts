import { inWords } from '../../../study/answer/answer.js';
import { capital } from '../../../study/format.js';
import type { ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced, madeOnTheWay, moneyText } from '../../../study/reach/sentence.js';
import { dateBehind, dateText, type Line, sentences } from '../first.js';
import { isLeast, neededBy, stepName, stepVerdict } from './told.js';

/** More would not be read on a first screen; the table of steps has them all. */
const MOST_TOLD = 4;

/** What is bought, in which order, for how much, and by when to order it. */
export function toDo(results: ReachResults): Line {
  const { outcome, steps } = results,
    bought = steps.filter(({ made }) => made !== null);
  if (outcome === 'holds already') return { brief: 'Nothing has to be changed.', more: '' };
  if (bought.length === 0)
    return {
      brief: outcome === 'not settled' ? 'Simulate more builds first.' : 'Look for other changes.',
      more: '',
    };
  const told = bought
      .slice(0, MOST_TOLD)
      .map((step, i) => boughtText(step, results, i === 0 ? undefined : bought[0])),
    left = bought.length - told.length,
    list = `${told.join('; ')}${left === 0 ? '' : `; then ${inWords(left)} more, see Steps below`}.`;
  return {
    brief: LEAD[outcome](bought.length) + list,
    more: sentences(
      orderText(results),
      ...bought
        .filter((step) => stepVerdict(step) !== 'brings more')
        .slice(0, 2)
        .map((step) => noGain(step, results)),
    ),
  };
}

const LEAD: Readonly<Record<ReachResults['outcome'], (steps: number) => string>> = {
  'holds already': () => '',
  reached: (steps) => (steps === 1 ? 'Buy ' : 'Buy, in this order: '),
  'not settled': () => 'If more builds settle it, buy ',
  'not reached': () => 'None of it is enough. As far as it goes: ',
};

/**
 * `“second colour booth” (420,000 EUR, order by 16 March 2027)`.
 * @param first what was told in full ahead of it: its year need not be said again
 */
function boughtText(step: StepResult, results: ReachResults, first?: StepResult): string {
  const { made, price } = step,
    terms = [
      ...(isPriced(results)
        ? [price === null ? 'its price is not given' : moneyText(price, results.currency)]
        : []),
      ...(made?.from == null ? [] : [`there from ${day(made.from, first?.made?.from)}`]),
      ...(made?.orderBy == null || results.ordered !== null
        ? []
        : [`order by ${day(made.orderBy, first?.made?.orderBy)}`]),
    ];
  return `${stepName(step)}${terms.length === 0 ? '' : ` (${terms.join(', ')})`}`;
}

const day = (iso: string, before: string | null | undefined): string =>
  before == null ? dateText(iso) : dateBehind(iso, before);

/** What the days of order are good for. */
function orderText(results: ReachResults): string {
  const made = madeOnTheWay(results);
  if (results.ordered === null)
    return made.some(({ orderBy }) => orderBy !== null)
      ? 'So ordered, all of it is there from the first day on.'
      : '';
  return made.some(({ from }) => from !== null)
    ? ''
    : `Ordered on ${dateText(results.ordered)}, all of it is there from the first day on.`;
}

/** Of a step whose gain is not sure: nothing says that it helps by itself, but it may be needed. */
function noGain(step: StepResult, results: ReachResults): string {
  const needed = neededBy(step, results).map((name) => `“${name}”`),
    seen = stepVerdict(step) === 'ships less' ? 'ships less' : 'was not seen to bring more',
    verb = needed.length === 1 ? 'needs' : 'need',
    why =
      needed.length > 0
        ? `, but ${needed.join(' and ')} ${verb} it`
        : isLeast(results)
          ? ', but without it the others fall short'
          : '';
  return `${capital(stepName(step))} ${seen} at its step${why}.`;
}
