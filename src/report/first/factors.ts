import { inWords } from '../../study/answer/answer.js';
import { toldCombination } from '../../study/factors/best.js';
import type { FactorsResults } from '../../study/factors/results.js';
import { rankingOf, type Shipped, togetherOf } from '../../study/factors/standing.js';
import { capital, count } from '../../study/format.js';
import { each } from '../../study/planners-unit.js';
import { boundsOf, type Estimate, negated } from '../../study/statistics/estimate.js';
import { changeName } from '../constraint.js';
import { byMeasureOf, changesOf, isMixed, type MeasureByFactors, onlyTold, triedOn } from '../factors.js';
import { ALLOWED, others, shortest } from './compared.js';
import {
  about,
  ends,
  type FirstScreen,
  gain,
  gainBetween,
  gainedText,
  how,
  INPUTS,
  type Line,
  NO_LINE,
  sentences,
  together,
} from './first.js';
import { beginWith, priceInFull } from './lines/offer.js';
import { stopsLine } from './lines/stops.js';
import { weakestLine } from './lines/weakest.js';

export function factorsFirst(results: FactorsResults): FirstScreen {
  const { scenario, rateUnit, combinations, constraint } = results,
    measures = byMeasureOf(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`,
    { isBase = false, lastUnit = [], offer } = combinations[toldCombination(results)] ?? {},
    told = { name: changesOf(results, toldCombination(results)), lastUnit, offer },
    effect = isBase
      ? null
      : others(
          measures.map((measure) => onlyTold(measure, results)),
          told,
          { of: 'with it', plannedEnd: results.plannedEnd },
        ),
    { brief, more } = bestLine(results, main, a);
  return {
    about: about(scenario),
    question: question(results),
    answer: answer(results, a),
    sure: main === undefined ? NO_LINE : sure(results, main, a),
    stops: stopsLine(constraint, { of: triedOn(results) ?? '' }),
    toDo: {
      brief,
      more: sentences(
        more,
        priceInFull(offer),
        togetherText(results, a),
        idleText(results),
        effect?.cost ?? '',
      ),
    },
    when: effect?.when ?? NO_LINE,
    rests: weakestLine(results.weakest, 'on today’s build'),
    next: { what: 'What else would help', command: `rateproof reliefs ${scenario.file}` },
    besides: sentences(restsText(results), ALLOWED, INPUTS),
    picture: {
      title: 'What each does, averaged over the others, and two together',
      more:
        'How much more or less, in per cent of today, on average over the values of ' +
        `${othersOf(results)}; in the grey band it does not matter.`,
    },
  };
}

const ANY_OF = new Intl.ListFormat('en-GB', { type: 'disjunction' });
/** More would not be read at a glance. */
const MOST_WORDS = 25;

/** With the names of what was tried, if these are short enough. */
function question({ factors }: FactorsResults): string {
  const names = factors.map(({ name }) => name),
    named = `What changes most what it ships: ${ANY_OF.format(names)}?`;
  return named.split(/\s+/).length <= MOST_WORDS
    ? named
    : `Which of ${inWords(factors.length)} things most changes what it ships?`;
}

/**
 * What the effect that is seen most does to the scenario as it is, all else as today; null where that was not
 * among the combinations, or is not surely of the same sign.
 */
function aloneToday({ combinations }: FactorsResults, { effect, difference }: Shipped): Estimate | null {
  const today = combinations.find(({ isBase }) => isBase)?.levels,
    [f] = effect.factors;
  if (today === undefined || f === undefined || today[f] !== effect.from[0]) return null;
  const alone = combinations
      .find(({ levels }) => levels.every((level, i) => level === (i === f ? effect.to[0] : today[i])))
      ?.compared.find(({ measure }) => measure === 'throughput')?.difference,
    { low, high } = boundsOf(alone ?? null);
  return alone !== undefined && (difference.mean > 0 ? low > 0 : high < 0) ? alone : null;
}

const othersOf = ({ factors }: FactorsResults): string =>
  factors.length === 2 ? 'the other' : `the other ${inWords(factors.length - 1)}`;

/** The interval of what is seen most; behind it what is shipped today and with the combination told. */
function sure(results: FactorsResults, main: MeasureByFactors, a: string): Line {
  const { level, combinations, design } = results,
    [first] = rankingOf(results).seen,
    told = toldCombination(results),
    most = main.combinations[told],
    alone = first === undefined ? null : aloneToday(results, first),
    positive = (each: Estimate): Estimate => (each.mean < 0 ? negated(each) : each),
    sureness = `(${how(level, main.base.n)})`;
  const onAverage = design.resolution === 'III' ? '' : `, on average over the values of ${othersOf(results)}`,
    today = `Today it ships ${ends(main.base)}${a}`,
    with_ =
      most === undefined || combinations[told]?.isBase === true
        ? ''
        : `; with “${changesOf(results, told)}” ${ends(most.value)}`;
  if (first === undefined) return { brief: `${today}${with_} ${sureness}.`, more: together(level) };
  return {
    brief:
      alone === null
        ? `That is ${ends(positive(first.difference))}${a}${onAverage} ${sureness}.`
        : `That is ${ends(positive(alone))}${a}, all else as today ${sureness}.`,
    more: sentences(`${today}${with_}.`, together(level)),
  };
}

/** The largest effect that is surely seen. */
function answer(results: FactorsResults, a: string): string {
  const { seen, leaders } = rankingOf(results),
    [first] = seen;
  if (first === undefined) {
    const { more, less } = togetherOf(results);
    return more.length + less.length > 0
      ? 'None by itself surely changes what it ships; two together do.'
      : 'None of them surely changes what it ships.';
  }
  const told = gainedText(aloneToday(results, first) ?? first.difference, a);
  const lead = leaders === 1 ? 'Most' : 'Largest seen',
    name = results.factors[first.effect.factors[0] ?? 0]?.name ?? '';
  return shortest(
    `${lead}: ${first.effect.name}, ${told}.`,
    `${lead}: ${name}, ${told}.`,
    `${leaders === 1 ? 'The largest effect' : 'The largest seen'}: ${told}.`,
  );
}

/** What ships most, and whether that is sure; of several that may, the one with the fewest changes. */
function bestLine(results: FactorsResults, main: MeasureByFactors | undefined, a: string): Line {
  const { best, combinations } = results,
    c = toldCombination(results),
    combination = combinations[c],
    found = main?.combinations[c];
  if (combination === undefined || found === undefined) return NO_LINE;
  const behind = best.notBehind.length,
    begin = capital(
      beginWith(changeName(`“${changesOf(results, c)}”`, combination.offer), combination.offer),
    );
  if (combination.isBase)
    return behind === 0
      ? { brief: 'Keep today’s build: it ships the most.', more: 'Surely more than any other combination.' }
      : { brief: 'Keep today’s build: no combination surely ships more.', more: '' };
  return {
    brief: `${begin}: ${gainedText(found.difference, a)}.`,
    more:
      `${capital(gainBetween(found.difference, a))}. ` +
      (best.nearest !== null
        ? 'It has the fewest changes of those that may ship the most.'
        : behind === 0
          ? 'It ships the most, surely more than any other combination.'
          : `It ships the most; ${behind === 1 ? 'one other' : count(behind, 'other')} may ship as much.`),
  };
}

function togetherText(results: FactorsResults, a: string): string {
  const { more, less } = togetherOf(results),
    [first] = [...more, ...less].sort((x, y) => Math.abs(y.difference.mean) - Math.abs(x.difference.mean));
  if (first === undefined || isMixed(first.effect)) return '';
  return `${capital(first.effect.name)}: together ${gain(first.difference, a)} than their sum.`;
}

function idleText(results: FactorsResults): string {
  const { idle } = rankingOf(results),
    names = idle.map((f) => results.factors[f]?.name ?? '');
  return names.length === 0 ? '' : `Makes no difference that matters: ${names.join(', ')}.`;
}

/** What a part of the combinations cannot tell. */
function restsText({ design }: FactorsResults): string {
  if (design.resolution === null) return '';
  const part = `${capital(inWords(design.run))} of ${count(design.of, 'combination')} were tried`;
  return {
    V: `${part}; three things at once are taken to add nothing.`,
    IV: `${part}; what two things do together comes in twos.`,
    III: `${part}; in the effect of each thing is what two others do together.`,
  }[design.resolution];
}
