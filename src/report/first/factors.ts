import { inWords } from '../../study/answer/answer.js';
import type { FactorsResults } from '../../study/factors/results.js';
import { rankingOf, togetherOf } from '../../study/factors/standing.js';
import { capital, count } from '../../study/format.js';
import { each } from '../../study/planners-unit.js';
import { bestOnly, byMeasureOf, isMixed, type MeasureByFactors } from '../factors.js';
import { others, shortest } from './compare.js';
import { between, type FirstScreen, gain, howTogether, INPUTS, noted } from './first.js';

export function factorsFirst(results: FactorsResults): FirstScreen {
  const { scenario, rateUnit, level, factors, combinations, best } = results,
    measures = byMeasureOf(results),
    [main] = measures,
    a = ` ${each(rateUnit)}`,
    most = main?.combinations[best.combination];
  const isBase = combinations[best.combination]?.isBase === true;
  return {
    question:
      `Which of ${inWords(factors.length)} things change what it ships, by themselves and ` + `two together?`,
    answer: answer(results, a),
    sure:
      main === undefined || most === undefined
        ? ''
        : `As it is it ships ${between(main.base)}${a}` +
          (isBase ? '' : `; with the best combination ${between(most.value)}`) +
          ` (${howTogether(main.base, level)}).`,
    why: null,
    toDo: [bestText(results, main, a), togetherText(results, a), idleText(results)]
      .filter((text) => text !== '')
      .join(' '),
    next: { what: 'What stops it was not looked for here', command: `rateproof simulate ${scenario.file}` },
    whenAndCost: isBase
      ? []
      : ['last unit', 'cost']
          .flatMap((id) => measures.filter((one) => one.id === id))
          .flatMap((measure) => others(bestOnly(measure, results, THIS), THIS)),
    rests:
      `${noted(scenario)}${restsText(results)}Nothing is said of what a change costs to make, nor ` +
      `whether it ` +
      `may be made. ${INPUTS}`,
    picture: {
      title: 'What each does by itself, and two together',
      more:
        'How much more or less is shipped, in per cent of what it ships as it is; in the grey band it does ' +
        'not matter.',
    },
  };
}

const THIS = 'this combination';

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

/** What ships most, and whether that is sure. */
function bestText(
  { best, combinations }: FactorsResults,
  main: MeasureByFactors | undefined,
  a: string,
): string {
  const combination = combinations[best.combination],
    found = main?.combinations[best.combination];
  if (combination === undefined || found === undefined) return '';
  const behind = best.notBehind.length,
    nearest = best.nearest === null ? undefined : combinations[best.nearest],
    sure =
      (behind === 0
        ? ', surely more than any other'
        : `; ${behind === 1 ? 'one other' : count(behind, 'other')} may ship as much`) +
      (nearest === undefined ? '' : `, with the fewest changes ${nearest.name}`);
  return combination.isBase
    ? `As it is it ships the most${sure}.`
    : `${capital(combination.name)} ships the most, ${gain(found.difference, a)} than as it is${sure}.`;
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
    V: `${part}; three things at once are taken to add nothing. `,
    IV: `${part}; what two things do together comes in twos. `,
    III: `${part}; in the effect of each thing is what two others do together. `,
  }[design.resolution];
}
