import { inWords } from '../../study/answer/answer.js';
import type { CompareResults } from '../../study/compare/results.js';
import { capital, count, exact, uncapital } from '../../study/format.js';
import { each, eachWorking, inUnit } from '../../study/planners-unit.js';
import { advised } from '../../study/priced/advised.js';
import type { Offer } from '../../study/priced/offer.js';
import { boundsOf, negated } from '../../study/statistics/estimate.js';
import { byMeasure, type MeasureCompared } from '../compare.js';
import { triedWith } from '../constraint.js';
import { ALLOWED, others, shortest } from './compared.js';
import { figure } from './figures.js';
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
import { beginWith, forPrice, priceInFull, priceText } from './lines/offer.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';

export function compareFirst(results: CompareResults): FirstScreen {
  const { scenario, rateUnit, level, constraint } = results,
    measures = byMeasure(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`;
  const best =
      main === undefined ? undefined : [...main.whatIfs].sort((x, y) => y.value.mean - x.value.mean)[0],
    first = best === undefined ? undefined : toBegin(results, main),
    told = results.whatIfs.find(({ name }) => name === best?.whatIf),
    of = `with “${told?.name ?? ''}”`,
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
                : `It ships ${ends(best.value, 1, main.base)}${a}, today `) +
              `${ends(main.base, 1, best?.value)} (${how(level, main.base.n)}).`,
            more: together(level),
          },
    stops: stopsLine(constraint, { of: triedWith(results) ?? '' }),
    toDo:
      best === undefined || first === undefined
        ? { brief: 'Try other changes: none of these surely ships more.', more: '' }
        : toDo(results, main, { first, best, cost: effect?.cost ?? '' }),
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

const offerOf = ({ whatIfs }: CompareResults, what: string): Offer | undefined =>
  whatIfs.find(({ name }) => name === what)?.offer;

interface Advised {
  /** What to begin with, and what ships most. */
  readonly first: MeasureCompared['whatIfs'][number];
  readonly best: MeasureCompared['whatIfs'][number];
  /** What `best` does to the cost of a unit. */
  readonly cost: string;
}

/** What to begin with, and what brings most where that is another one: each with its gain and its price. */
function toDo(
  results: CompareResults,
  main: MeasureCompared | undefined,
  { first, best, cost }: Advised,
): Line {
  const a = ` ${each(results.rateUnit)}`,
    [offer, offerOfBest] = [first, best].map(({ whatIf }) => offerOf(results, whatIf)),
    between = gainBetween(first.difference, a),
    rest = otherGains(main, [first.whatIf, best.whatIf]);
  // What the answer names is told first, if it surely ships more.
  const [lead, other] = boundsOf(best.difference).low > 0 ? [best, first] : [first, best],
    begin =
      capital(beginWith(`“${lead.whatIf}”`, offerOf(results, lead.whatIf))) +
      `: ${gainedText(lead.difference, a)}`;
  if (first === best)
    return {
      brief: `${begin}.`,
      more: sentences(`${capital(between)}. It ships the most.`, rest, priceInFull(offer), cost),
    };
  return {
    brief:
      `${begin}; or “${other.whatIf}”${forPrice(offerOf(results, other.whatIf))}: ` +
      `${gainedText(other.difference)}.`,
    more: sentences(
      `“${first.whatIf}”: ${between}; ${priceText(offer)}.`,
      `“${best.whatIf}”: ${gainBetween(best.difference, a)}; ${priceText(offerOfBest)}.`,
      cost === '' ? '' : `With “${best.whatIf}” ${uncapital(cost)}`,
      rest,
    ),
  };
}

/** Of those that surely ship more the one to begin with; undefined: none does. */
function toBegin(
  results: CompareResults,
  main: MeasureCompared | undefined,
): MeasureCompared['whatIfs'][number] | undefined {
  const { rateUnit, whatIfs } = results,
    better = (main?.whatIfs ?? []).filter(({ verdict }) => verdict.endsWith('better'));
  return advised(
    better.map((of) => ({ of, gain: of.difference, offer: offerOf(results, of.whatIf) })),
    ({ of: { whatIf, value } }) => {
      const asked = whatIfs.find(({ name }) => name === whatIf)?.askedPerDay ?? null;
      return asked !== null && value.low !== null && value.low >= inUnit(asked, rateUnit);
    },
  )?.of;
}

function question({ base: { askedPerDay: asked }, whatIfs, rateUnit }: CompareResults): string {
  return asked === null
    ? `Which of ${count(whatIfs.length, 'change')} ships more?`
    : `Does ${whatIfs.length === 1 ? 'the' : 'a'} change bring it to ` +
        `${exact(inUnit(asked, rateUnit))} ${eachWorking(rateUnit)}?`;
}

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
function otherGains(main: MeasureCompared | undefined, told: readonly string[]): string {
  const others = (main?.whatIfs ?? [])
    .filter(({ whatIf }) => !told.includes(whatIf))
    .sort((x, y) => y.difference.mean - x.difference.mean);
  if (others.length === 0 || others.length > OTHERS) return '';
  const texts = others.map(
    ({ whatIf, difference }) =>
      `${whatIf} ${figure(difference.mean < 0 ? negated(difference) : difference)} ` +
      (difference.mean < 0 ? 'less' : 'more'),
  );
  return `${others.length === 1 ? 'The other' : 'The others'}: ${texts.join(', ')}.`;
}
