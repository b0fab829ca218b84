import { inWords } from '../../study/answer/answer.js';
import type { CompareResults } from '../../study/compare/results.js';
import { capital, count, exact } from '../../study/format.js';
import { each, eachWorking, inUnit } from '../../study/planners-unit.js';
import type { Offer } from '../../study/priced/offer.js';
import type { DateQuantile } from '../../study/programme/dates.js';
import { boundsOf, type Estimate, negated } from '../../study/statistics/estimate.js';
import { byMeasure, type MeasureCompared } from '../compare.js';
import { triedWith } from '../constraint.js';
import { figure, range } from './figures.js';
import {
  asking,
  between,
  type FirstScreen,
  gain,
  howTogether,
  INPUTS,
  roughly,
  sentences,
  whyText,
} from './first.js';
import { lastUnitText, planSays } from './last-unit.js';
import { beginWith, withItsPrice } from './offer.js';
import { weakestText } from './weakest.js';

export function compareFirst(results: CompareResults): FirstScreen {
  const { scenario, rateUnit, level, constraint } = results,
    measures = byMeasure(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`;
  const best =
      main === undefined ? undefined : [...main.whatIfs].sort((x, y) => y.value.mean - x.value.mean)[0],
    told = results.whatIfs.find(({ name }) => name === best?.whatIf);
  return {
    question: asking(scenario, question(results)),
    answer: answer(results, main),
    sure:
      main === undefined
        ? ''
        : `Today it ships ${between(main.base)}${a}` +
          (best === undefined ? '' : `; with “${best.whatIf}” ${between(best.value)}`) +
          ` (${howTogether(main.base, level)}).`,
    why: constraint === null ? null : whyText(constraint, triedWith(results) ?? ''),
    toDo:
      best === undefined || !best.verdict.endsWith('better')
        ? 'Try other changes: none of these surely ships more.'
        : `${capital(beginWith(`“${best.whatIf}”`, told?.offer))}: it ships the most, ` +
          `${gain(best.difference, a)} than today.${otherGains(main, best.whatIf)}`,
    next: { what: 'What else would help', command: `rateproof reliefs ${scenario.file}` },
    whenAndCost: others(measures, told, results.plannedEnd),
    rests: weakestText(results.weakest, 'today’s build ships'),
    besides: sentences(ALLOWED, INPUTS),
    picture: {
      title: 'Each what-if against the scenario as it is',
      more: 'How much more or less, in per cent; in the grey band it does not matter.',
    },
  };
}

function question({ scenario, base: { askedPerDay: asked }, whatIfs, rateUnit }: CompareResults): string {
  return asked === null
    ? `Which of ${count(whatIfs.length, 'change')} to “${scenario.name}” ships more?`
    : `Does a change bring “${scenario.name}” to ${exact(inUnit(asked, rateUnit))} ` +
        `${eachWorking(rateUnit)}? ${capital(inWords(whatIfs.length))} ` +
        `${whatIfs.length === 1 ? 'was' : 'were'} tried.`;
}

/** More would not be read at a glance. */
const MOST_WORDS = 12;
/** The first of these that is short enough: a name may be long. */
export const shortest = (...texts: readonly string[]): string =>
  texts.find((text) => text.split(/\s+/).length <= MOST_WORDS) ?? texts.at(-1) ?? '';

/** Which of them surely ship what their plan asks, by the whole interval. */
function answer({ whatIfs, rateUnit }: CompareResults, main: MeasureCompared | undefined): string {
  if (main === undefined || whatIfs.length === 0) return 'There is nothing to compare.';
  const judged = main.whatIfs.map(({ whatIf, value }) => {
    const asked = whatIfs.find(({ name }) => name === whatIf)?.askedPerDay ?? null,
      rate = asked === null ? null : inUnit(asked, rateUnit),
      { low, high } = boundsOf(value);
    return {
      ...{ whatIf, value, rate },
      reaches: rate !== null && low >= rate,
      falls: rate !== null && high < rate,
    };
  });
  const reached = judged.filter(({ reaches }) => reaches),
    [best] = [...judged].sort((a, b) => b.value.mean - a.value.mean),
    most = best === undefined ? '' : roughly(best.value, best.rate),
    name = best?.whatIf ?? '',
    all = inWords(judged.length);
  if (reached.length > 0)
    return reached.length === 1
      ? shortest(
          `${judged.length === 1 ? 'Yes:' : 'Only'} ${reached[0]?.whatIf ?? ''} does.`,
          `One of ${all} does.`,
        )
      : `${capital(inWords(reached.length))} of ${all} do.`;
  if (judged.some(({ rate }) => rate === null))
    return shortest(`The most: ${name} ships ${most}.`, `The most that one ships is ${most}.`);
  const [asked] = new Set(judged.map(({ rate }) => rate)),
    goal = judged.every(({ rate }) => rate === asked) ? exact(asked ?? 0) : 'what is asked';
  if (!judged.every(({ falls }) => falls))
    return shortest(`Not settled. Nearest: ${name}, ${most}.`, `Not settled. The nearest ships ${most}.`);
  return judged.length === 1
    ? `No: ${most}, not ${goal}.`
    : shortest(
        `No, none reaches ${goal} ${each(rateUnit)}. Nearest: ${name}, ${most}.`,
        `No, none reaches ${goal} ${each(rateUnit)}. The nearest ships ${most}.`,
      );
}

/** So many of the other what-ifs are told; a longer list would not be read. */
const OTHERS = 3;

/** `Of the others no absence 0.11 more, small body store 0.07 less.` */
function otherGains(main: MeasureCompared | undefined, best: string): string {
  const others = (main?.whatIfs ?? [])
    .filter(({ whatIf }) => whatIf !== best)
    .sort((x, y) => y.difference.mean - x.difference.mean);
  if (others.length === 0 || others.length > OTHERS) return '';
  const told = others.map(
    ({ whatIf, difference }) =>
      `${whatIf} ${figure(difference.mean < 0 ? negated(difference) : difference)} ` +
      (difference.mean < 0 ? 'less' : 'more'),
  );
  return ` ${others.length === 1 ? 'The other' : 'The others'}: ${told.join(', ')}.`;
}

/** Said of changes that nobody has looked at but the planner. */
export const ALLOWED = 'Whether codes and room allow the changes is not known here.';

/** What the best does to the dates and the prices, against the scenario as it is. */
export function others(
  measures: readonly MeasureCompared[],
  best:
    | {
        readonly name: string;
        readonly lastUnit: readonly DateQuantile[];
        readonly offer?: Offer | undefined;
      }
    | undefined,
  plannedEnd: string | null,
): string[] {
  if (best === undefined) return [];
  const of = (id: string) => {
    const measure = measures.find((each) => each.id === id),
      difference = measure?.whatIfs.find(({ whatIf }) => whatIf === best.name)?.difference;
    return measure === undefined || difference === undefined ? null : { ...measure, difference };
  };
  const end = of('last unit'),
    cost = of('cost'),
    out = lastUnitText(best.lastUnit),
    name = `“${best.name}”`;
  return [
    ...(end === null
      ? []
      : [
          `With ${name} the last unit is out ${out === null ? '' : `${out}, `}` +
            `${changeText(end, ['sooner', 'later'])}${planSays(plannedEnd, best.lastUnit)}.`,
        ]),
    ...(cost === null
      ? []
      : [
          `A unit is then ${changeText(cost, ['cheaper', 'dearer'])}` +
            `${withItsPrice(cost.difference, best.offer)}.`,
        ]),
  ];
}

/** `14 days sooner than today (13 to 16)`, or that neither is sure. */
function changeText(
  { unit, difference }: Pick<MeasureCompared, 'unit'> & { readonly difference: Estimate },
  [less, more]: readonly [string, string],
): string {
  const { low, high } = boundsOf(difference),
    by = high < 0 ? negated(difference) : difference;
  return low <= 0 && high >= 0
    ? `neither surely ${less} nor ${more} than today`
    : `${figure(by)} ${unit} ${high < 0 ? less : more} than today (${range(by)})`;
}
