import { inWords } from '../answer/answer.js';
import { zoneSentence } from '../compare/sentence.js';
import { bounds, capital, count, intervalName, number, signed, withInterval } from '../format.js';
import { wordInNames } from './named.js';
import type { FactorsResults } from './results.js';
import { rankingOf, type Shipped, togetherOf } from './standing.js';

type Results = Omit<FactorsResults, 'answer'>;

/**
 * Which factor matters most, which two do more or less together than their sum, which do not matter, and the
 * best combination: of the throughput.
 */
export function factorsSentence(results: Results): string {
  const { measures, eachLevel, level, base, combinations } = results,
    locked = [base, ...combinations.filter(({ isBase }) => !isBase)]
      .filter(({ gridlocks }) => gridlocks > 0)
      .map(({ name }) => name);
  return [
    designSentence(results),
    ...aloneSentences(results),
    ...togetherSentences(results),
    bestSentence(results),
    zoneSentence(measures),
    `In brackets: ${intervalName(eachLevel)}, so that all of it holds together with ` +
      `${number(100 * level)} %.`,
    ...(locked.length > 0 ? [`In gridlock at least once: ${locked.join('; ')}.`] : []),
  ].join(' ');
}

const unitOf = ({ measures }: Pick<Results, 'measures'>): string => measures[0]?.unit ?? '';

/** How many were run, and what therefore cannot be told apart. */
export function designSentence({ design, factors }: Pick<Results, 'design' | 'factors'>): string {
  const all = count(design.of, 'combination');
  if (design.resolution === null) return `All ${all} of ${inWords(factors.length)} factors were run.`;
  const part = `${capital(inWords(design.run))} of ${all} of ${inWords(factors.length)} factors were run`;
  return {
    V: `${part}: effects of one factor and of two are told apart, if three together add nothing.`,
    IV:
      `${part}: effects of one factor are told apart, if three together add nothing; those of ` +
      `two come in twos.`,
    III: `${part}: the effect of each factor has in it what two others do together.`,
  }[design.resolution];
}

/** `+0.30 (0.25 to 0.34)` */
const size = ({ difference }: Shipped): string => `${signed(difference)} (${bounds(difference)})`;
const sized = (each: Shipped): string => `${each.effect.name}, ${size(each)}`;

function aloneSentences(results: Results): string[] {
  const { seen, leaders, idle, level, open } = rankingOf(results),
    names = (numbers: readonly number[]): string =>
      numbers.map((f) => results.factors[f]?.name ?? '').join(', '),
    [first, ...others] = seen,
    unit = unitOf(results);
  const { resolution } = results.design,
    average = resolution === 'III' ? '' : ', on average over the levels of the others';
  const lead =
    first === undefined
      ? `No factor surely changes what is shipped${average.replace(',', '')}.`
      : leaders === 1
        ? `What matters most by itself: ${first.effect.name}, ${size(first)} ${unit}${average}.`
        : `The largest effect by itself: ${first.effect.name}, ${size(first)} ${unit}${average}; ` +
          'whether another is larger is not settled.';
  return [
    lead,
    ...(others.length > 0 ? [`Also seen: ${others.map(sized).join('; ')}.`] : []),
    ...(idle.length > 0 ? [`No difference that matters, by itself or with another: ${names(idle)}.`] : []),
    ...(level.length > 0 ? [`No difference that matters ${levelWords(resolution)}: ${names(level)}.`] : []),
    ...(open.length > 0 ? [`Not settled by itself: ${names(open)}.`] : []),
  ];
}

const levelWords = (resolution: FactorsResults['design']['resolution']): string =>
  resolution === 'III' ? 'with what two others add to it' : 'on average over the levels of the others';

function togetherSentences(results: Results): string[] {
  const { more, less, within, open } = togetherOf(results),
    { factors } = results;
  const told = (each: Shipped): string => {
    const also = each.effect.mixedWith
      .filter((word) => word.length === 2)
      .map((word) => wordInNames(factors, word));
    return `${[each.effect.name, ...also].join(' or ')} ${size(each)}`;
  };
  const part = (words: string, found: readonly Shipped[]): string[] =>
    found.length === 0 ? [] : [`${words}: ${found.map(told).join('; ')}.`];
  const none = more.length + less.length + open.length === 0 && within.length > 0;
  return [
    ...part('Together more than the sum of both', more),
    ...part('Together less than the sum of both', less),
    ...(none
      ? ['No two do more or less together than their sum by what matters.']
      : within.length > 0
        ? [
            `Together their sum, within what matters: ` +
              `${within.map(({ effect: { name } }) => name).join('; ')}.`,
          ]
        : []),
    ...part('Not settled whether together more or less than the sum', open),
  ];
}

function bestSentence(results: Results): string {
  const { best, combinations, base } = results,
    most = combinations[best.combination],
    shipped = most?.compared.find(({ measure }) => measure === 'throughput');
  if (most === undefined || shipped === undefined) return '';
  const behind = best.notBehind.map((c) => combinations[c]?.name ?? ''),
    sure =
      behind.length === 0
        ? 'surely more than each other combination'
        : behind.length <= MOST_NAMED
          ? `not surely more than ${behind.join('; ')}`
          : `not surely more than ${count(behind.length, 'other combination')}`,
    now = base.values.find(({ measure }) => measure === 'throughput');
  const against = most.isBase
    ? 'That is the scenario as it is.'
    : `As it is it ships ${now === undefined ? '' : withInterval(now.value)}: ` +
      `${signed(shipped.difference)} (${bounds(shipped.difference)}).`;
  const nearest = best.nearest === null ? undefined : combinations[best.nearest],
    fewest = nearest === undefined ? '' : ` (with the fewest changes: ${nearest.name})`;
  return (
    `Most is shipped with ${most.name}: ${withInterval(shipped.value, unitOf(results))}, ${sure}${fewest}. ` +
    against
  );
}

/** More names than these are only counted. */
const MOST_NAMED = 3;
