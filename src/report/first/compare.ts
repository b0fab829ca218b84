import type { CompareResults } from '../../study/compare/results.js';
import { capital, count, exact, mean } from '../../study/format.js';
import { each, eachWorking, inUnit } from '../../study/planners-unit.js';
import { boundsOf, negated } from '../../study/statistics/estimate.js';
import { byMeasure, type MeasureCompared } from '../compare.js';
import { between, type FirstScreen, gain, how, roughly } from './first.js';

export function compareFirst(results: CompareResults): FirstScreen {
  const { scenario, rateUnit, differenceLevel } = results,
    measures = byMeasure(results),
    [main] = measures,
    a = each(rateUnit);
  const best =
    main === undefined ? undefined : [...main.whatIfs].sort((x, y) => y.value.mean - x.value.mean)[0];
  return {
    question: question(results),
    answer: answer(results, main),
    sure:
      main === undefined
        ? ''
        : `As it is it ships ${between(main.base)} ${a} (${how(main.base)}); ` +
          (best === undefined ? '' : `with ${best.whatIf} ${between(best.value)}.`),
    why: null,
    toDo:
      best === undefined || !best.verdict.endsWith('better')
        ? 'None of them surely ships more: look for what stops it with rateproof simulate.'
        : `${capital(best.whatIf)} is the nearest: ${gain(best.difference)} ${a}. Its price is not in this.`,
    whenAndCost: ['last unit', 'cost']
      .flatMap((id) => measures.filter((one) => one.id === id))
      .flatMap((measure) => others(measure, best?.whatIf)),
    rests:
      `Each what-if is ${scenario.name} with its changes and nothing else; all intervals are ` +
      `${exact(Number((100 * differenceLevel).toFixed(2)))} %, so that all of ` +
      'it holds together.',
  };
}

function question({ base: { askedPerDay: asked }, whatIfs, rateUnit }: CompareResults): string {
  return asked === null
    ? `Which of ${count(whatIfs.length, 'what-if')} ships more?`
    : `Which of ${count(whatIfs.length, 'what-if')} ships ` +
        `${exact(inUnit(asked, rateUnit))} ${eachWorking(rateUnit)}?`;
}

/** Which of them surely ship what their plan asks, by the whole interval. */
function answer({ whatIfs, rateUnit }: CompareResults, main: MeasureCompared | undefined): string {
  if (main === undefined || whatIfs.length === 0) return 'There is nothing to compare.';
  const judged = main.whatIfs.map(({ whatIf, value }) => {
    const asked = whatIfs.find(({ name }) => name === whatIf)?.askedPerDay ?? null,
      rate = asked === null ? null : inUnit(asked, rateUnit);
    return {
      whatIf,
      value,
      rate,
      reaches: rate !== null && value.low !== null && value.low >= rate,
      falls: rate !== null && value.high !== null && value.high < rate,
    };
  });
  const reached = judged.filter(({ reaches }) => reaches),
    [best] = [...judged].sort((a, b) => b.value.mean - a.value.mean),
    nearest = best === undefined ? '' : `${best.whatIf} ships ${roughly(best.value, best.rate)}`;
  if (reached.length > 0)
    return reached.length === 1
      ? `Only ${reached[0]?.whatIf ?? ''} does.`
      : `${exact(reached.length)} of ${exact(judged.length)} do.`;
  if (judged.some(({ rate }) => rate === null)) return `The most: ${nearest}.`;
  return judged.every(({ falls }) => falls) ? `None; ${nearest}.` : `Not settled; ${nearest}.`;
}

/** What is not in a figure. */
const beside: Readonly<Record<string, string>> = { cost: ', what it costs to have it not counted' };

function others({ id, unit, whatIfs }: MeasureCompared, best: string | undefined): string[] {
  return whatIfs
    .filter(({ whatIf }) => whatIf === best)
    .map(({ whatIf, difference }) => {
      const { low, high } = boundsOf(difference),
        [less, more] = id === 'cost' ? ['cheaper', 'dearer'] : ['sooner', 'later'],
        what = id === 'cost' ? 'a unit is' : 'the last unit is out';
      if (low <= 0 && high >= 0) return `With ${whatIf} ${what} neither surely ${less} nor ${more}.`;
      const by = mean(high < 0 ? negated(difference) : difference);
      return `With ${whatIf} ${what} ${by} ${unit} ${high < 0 ? less : more}${beside[id] ?? ''}.`;
    });
}
