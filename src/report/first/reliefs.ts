import { bounds, capital, exact, mean, signed } from '../../study/format.js';
import { each, eachWorking } from '../../study/planners-unit.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import { boundsOf, type Estimate, negated } from '../../study/statistics/estimate.js';
import { between, type FirstScreen, gain, how } from './first.js';

export function reliefsFirst(results: ReliefsResults): FirstScreen {
  const { scenario, base, reliefs, best, rate, rateUnit, measureNext } = results,
    a = each(rateUnit),
    asked = rate.asked,
    [first, ...rest] = reliefs.filter(({ gain: { low } }) => low !== null && low > 0),
    next = rest.slice(0, 2);
  const none =
    asked !== null &&
    reliefs.every(
      ({ gain: { high } }) =>
        high !== null && base.throughput.high !== null && base.throughput.high + high < asked,
    );
  return {
    question:
      asked === null
        ? `What brings more units to “${scenario.name}”?`
        : `What brings “${scenario.name}” to ${exact(asked)} ${eachWorking(rateUnit)}?`,
    answer:
      first === undefined
        ? 'Nothing that was tried surely brings more.'
        : none
          ? `No single change reaches ${exact(asked)}.`
          : `${capital(first.text)}: ${signed(first.gain)} ${a}.`,
    sure: `As it is it ships ${between(base.throughput)} ${a} (${how(base.throughput)}).`,
    why: null,
    toDo:
      first === undefined
        ? 'Try two changes together in a what-ifs file: rateproof compare.'
        : `Most by itself: ${first.text}, ${gain(first.gain)} ${a}` +
          `${best?.named === 1 && best.others === 0 ? '' : ', not told apart from others'}. ` +
          next.map(({ text, gain: more }) => `Then ${text}, ${gain(more)}.`).join(' ') +
          (next.length > 0 ? ' They overlap: two together may bring less than their sum.' : ''),
    whenAndCost: costs(results, first),
    rests:
      measureNext === null
        ? 'No guess or estimate that was varied surely moves it.'
        : `Measure next: ${measureNext.words}, ${measureNext.basis} ${measureNext.now}; at ` +
          `${measureNext.value} it ships ${moreOrLess(measureNext.gain)} ${a}.`,
  };
}

function costs(
  { base: { costPerUnit, currency } }: ReliefsResults,
  first: ReliefsResults['reliefs'][number] | undefined,
): string[] {
  if (costPerUnit === null) return ['The scenario gives no prices.'];
  const now = `A unit costs ${mean(costPerUnit)} ${currency ?? ''} today`,
    change = first?.costPerUnit ?? null;
  if (first === undefined || change === null) return [`${now}.`];
  const { low, high } = boundsOf(change);
  if (low <= 0 && high >= 0) return [`${now}; with ${first.text} neither surely more nor less.`];
  return [
    `${now}; with ${first.text} ${moreOrLess(change, ` ${currency ?? ''}`)}, what it costs to have it not ` +
      'counted.',
  ];
}

/** `0.24 (0.19 to 0.28) less`. */
function moreOrLess(difference: Estimate, unit = ''): string {
  const size = difference.mean < 0 ? negated(difference) : difference;
  return `${mean(size)}${unit} (${bounds(size)}) ${difference.mean < 0 ? 'less' : 'more'}`;
}
