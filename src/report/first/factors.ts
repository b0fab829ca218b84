import { inWords } from '../../study/answer/answer.js';
import { toldCombination } from '../../study/factors/best.js';
import type { FactorsResults } from '../../study/factors/results.js';
import { rankingOf, togetherOf } from '../../study/factors/standing.js';
import { capital, count } from '../../study/format.js';
import { each } from '../../study/planners-unit.js';
import { negated } from '../../study/statistics/estimate.js';
import { byMeasureOf, changesOf, isMixed, type MeasureByFactors, onlyTold, triedOn } from '../factors.js';
import { others, shortest } from './compare.js';
import {
  between,
  type FirstScreen,
  gain,
  howTogether,
  INPUTS,
  noted,
  OTHER_BUILDS,
  sentences,
  whyText,
} from './first.js';
import { weakestText } from './weakest.js';

export function factorsFirst(results: FactorsResults): FirstScreen {
  const { scenario, rateUnit, factors, combinations, constraint } = results,
    measures = byMeasureOf(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`,
    { isBase = false, lastUnit = [] } = combinations[toldCombination(results)] ?? {},
    told = { name: changesOf(results, toldCombination(results)), lastUnit };
  return {
    question: `Which of ${inWords(factors.length)} things most changes what “${scenario.name}” ships?`,
    answer: answer(results, a),
    sure: main === undefined ? '' : sure(results, main, a),
    why: constraint === null ? null : whyText(constraint, `${triedOn(results) ?? ''}${isBase ? '' : ', '}`),
    toDo: [bestText(results, main, a), togetherText(results, a), idleText(results)]
      .filter((text) => text !== '')
      .join(' '),
    next: { what: 'What else would help', command: `rateproof reliefs ${scenario.file}` },
    whenAndCost: isBase
      ? []
      : ['last unit', 'cost']
          .flatMap((id) => measures.filter((one) => one.id === id))
          .flatMap((measure) => others(onlyTold(measure, results), told)),
    rests: sentences(
      noted(scenario),
      restsText(results),
      weakestText(results.weakest, 'today’s build ships'),
      'What the changes cost, and whether codes and room allow them, is not known here.',
      OTHER_BUILDS,
      INPUTS,
    ),
    picture: {
      title: 'What each does by itself, and two together',
      more: 'How much more or less, in per cent of today; in the grey band it does not matter.',
    },
  };
}

/** The interval of what is seen most, what is shipped today, and with the combination that is told. */
function sure(results: FactorsResults, main: MeasureByFactors, a: string): string {
  const { factors, level, combinations, design } = results,
    [first] = rankingOf(results).seen,
    others = factors.length === 2 ? 'the other' : `the other ${inWords(factors.length - 1)}`,
    told = toldCombination(results),
    most = main.combinations[told];
  const effect =
    first === undefined
      ? ''
      : `That is ${between(first.difference.mean < 0 ? negated(first.difference) : first.difference)}${a}` +
        `${design.resolution === 'III' ? '' : `, on average over the values of ${others}`}. `;
  return (
    `${effect}Today it ships ${between(main.base)}${a}` +
    (most === undefined || combinations[told]?.isBase === true
      ? ''
      : `; with “${changesOf(results, told)}” ${between(most.value)}`) +
    ` (${howTogether(main.base, level)}).`
  );
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
  const told = gain(first.difference, a).replace(/ \(.*\)$/, '');
  const lead = leaders === 1 ? 'Most' : 'Largest seen',
    name = results.factors[first.effect.factors[0] ?? 0]?.name ?? '';
  return shortest(
    `${lead}: ${first.effect.name}, ${told}.`,
    `${lead}: ${name}, ${told}.`,
    `${leaders === 1 ? 'The largest effect' : 'The largest seen'}: ${told}.`,
  );
}

/** What ships most, and whether that is sure; of several that may, the one with the fewest changes. */
function bestText(results: FactorsResults, main: MeasureByFactors | undefined, a: string): string {
  const { best, combinations } = results,
    c = toldCombination(results),
    combination = combinations[c],
    found = main?.combinations[c];
  if (combination === undefined || found === undefined) return '';
  const behind = best.notBehind.length,
    name = `“${changesOf(results, c)}”`;
  if (combination.isBase)
    return behind === 0
      ? 'Today’s ships the most, surely more than any other combination.'
      : 'No combination surely ships more than today’s.';
  const gained = `${gain(found.difference, a)} than today`;
  return best.nearest !== null
    ? `With the fewest changes ${name} may ship as much as any: ${gained}.`
    : `${name} ships the most: ${gained}` +
        (behind === 0
          ? ', surely more than any other combination.'
          : `; ${behind === 1 ? 'one other' : count(behind, 'other')} may ship as much.`);
}

function togetherText(results: FactorsResults, a: string): string {
  const { more, less } = togetherOf(results),
    [first] = [...more, ...less].sort((x, y) => Math.abs(y.difference.mean) - Math.abs(x.difference.mean));
  if (first === undefined || isMixed(first.effect)) return '';
  return `${capital(first.effect.name)}: ${gain(first.difference, a)} than the sum of both.`;
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
