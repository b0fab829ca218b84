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
  about,
  ends,
  type FirstScreen,
  gainBetween,
  gainedText,
  how,
  INPUTS,
  type Line,
  NO_LINE,
  roughly,
  sentences,
  together,
} from './first.js';
import { lastUnitLine } from './last-unit.js';
import { beginWith, priceInFull, withItsPrice } from './offer.js';
import { stopsLine } from './stops.js';
import { weakestLine } from './weakest.js';

export function compareFirst(results: CompareResults): FirstScreen {
  const { scenario, rateUnit, level, constraint } = results,
    measures = byMeasure(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`;
  const best =
      main === undefined ? undefined : [...main.whatIfs].sort((x, y) => y.value.mean - x.value.mean)[0],
    told = results.whatIfs.find(({ name }) => name === best?.whatIf),
    isBetter = best?.verdict.endsWith('better') === true,
    of = isBetter ? 'with it' : `with “${best?.whatIf ?? ''}”`,
    effect = told === undefined ? null : others(measures, told, { of, plannedEnd: results.plannedEnd });
  return {
    about: about(scenario),
    question: question(results),
    answer: answer(results, main),
    sure:
      main === undefined
        ? NO_LINE
        : {
            brief:
              (best === undefined
                ? 'Today it ships '
                : `The best ships ${ends(best.value)}${a}, today’s build `) +
              `${ends(main.base)} (${how(level, main.base.n)}).`,
            more: together(level),
          },
    stops: stopsLine(constraint, { of: triedWith(results) ?? '' }),
    toDo:
      best === undefined || !isBetter
        ? { brief: 'Try other changes: none of these surely ships more.', more: '' }
        : {
            brief:
              `${capital(beginWith(`“${best.whatIf}”`, told?.offer))}: ` +
              `${gainedText(best.difference, a)} than today.`,
            more: sentences(
              `It ships the most, ${gainBetween(best.difference, a)}.`,
              otherGains(main, best.whatIf),
              priceInFull(told?.offer),
              effect?.cost ?? '',
            ),
          },
    when: effect?.when ?? NO_LINE,
    rests: weakestLine(results.weakest, 'on today’s build'),
    next: { what: 'What else would help', command: `rateproof reliefs ${scenario.file}` },
    besides: sentences(ALLOWED, INPUTS),
    picture: {
      title: 'Each what-if against the scenario as it is',
      more: 'How much more or less, in per cent; in the grey band it does not matter.',
    },
  };
}

function question({ base: { askedPerDay: asked }, whatIfs, rateUnit }: CompareResults): string {
  return asked === null
    ? `Which of ${count(whatIfs.length, 'change')} ships more?`
    : `Does ${whatIfs.length === 1 ? 'the' : 'a'} change bring it to ` +
        `${exact(inUnit(asked, rateUnit))} ${eachWorking(rateUnit)}?`;
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
        `No what-if reaches ${goal}. Nearest: ${name}, ${most}.`,
        `No what-if reaches ${goal}. The nearest ships ${most}.`,
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
  return `${others.length === 1 ? 'The other' : 'The others'}: ${told.join(', ')}.`;
}

/** Said of changes that nobody has looked at but the planner. */
export const ALLOWED = 'Whether codes and room allow the changes is not known here.';

/** What the best does to the dates and the prices, against the scenario as it is. */
export function others(
  measures: readonly MeasureCompared[],
  best: {
    readonly name: string;
    readonly lastUnit: readonly DateQuantile[];
    readonly offer?: Offer | undefined;
  },
  beside: { readonly of: string; readonly plannedEnd: string | null },
): { readonly when: Line; readonly cost: string } {
  const of = (id: string) => {
    const measure = measures.find((each) => each.id === id),
      difference = measure?.whatIfs.find(({ whatIf }) => whatIf === best.name)?.difference;
    return measure === undefined || difference === undefined ? null : { ...measure, difference };
  };
  const end = of('last unit'),
    cost = of('cost'),
    { brief, more } = lastUnitLine(best.lastUnit, beside);
  return {
    when: {
      brief,
      more: sentences(more, end === null ? '' : `That is ${changeText(end, ['sooner', 'later'])}.`),
    },
    cost:
      cost === null
        ? ''
        : `A unit is then ${changeText(cost, ['cheaper', 'dearer'])}` +
          `${withItsPrice(cost.difference, best.offer)}.`,
  };
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
