import { capital, count, exact, number } from '../../../study/format.js';
import { listed } from '../../../study/lists.js';
import { each, type PlannersUnit } from '../../../study/planners-unit.js';
import type { VarianceShare } from '../../../study/uncertain/random-effects.js';
import type { InputsMeasure, InputsResult } from '../../../study/uncertain/results.js';
import { ends, sentences, surely } from '../first.js';

/** What was drawn, if anything was. */
export const shippedWithInputs = (inputs: InputsResult | undefined): InputsMeasure | undefined =>
  inputs?.measures.find(({ id, low }) => id === 'shipped' && low !== null);

/** `on average 3.1 to 3.7 a day, whatever the measured inputs really are (95 % sure)`. */
export const shippedText = (shipped: InputsMeasure, unit: PlannersUnit): string =>
  `on average ${ends({ ...shipped, n: 2 * shipped.pairs })} ${each(unit)}, with what is not known of the ` +
  `measured inputs (${surely(shipped.level)})`;

/** What is behind that interval, and what is not in it. */
export function inputsTold(inputs: InputsResult | undefined): string {
  if (inputs === undefined) return '';
  const shipped = shippedWithInputs(inputs);
  return sentences(
    inputs.drawn.length === 0
      ? 'No value says how often it was measured, so none was drawn anew.'
      : shipped?.inputOfInterval == null
        ? ''
        : partsTold(shipped.inputOfInterval),
    leftTold(inputs),
  );
}

/** Simple fractions in words, with what is left of one. */
const FRACTIONS: readonly (readonly [of: number, words: string, rest: string])[] = [
  [0.1, 'one tenth', 'nine tenths'],
  [0.2, 'one fifth', 'four fifths'],
  [0.25, 'one quarter', 'three quarters'],
  [1 / 3, 'one third', 'two thirds'],
  [0.5, 'one half', 'one half'],
  [2 / 3, 'two thirds', 'one third'],
  [0.75, 'three quarters', 'one quarter'],
  [0.8, 'four fifths', 'one fifth'],
  [0.9, 'nine tenths', 'one tenth'],
];

/** `About two thirds of that is input, one third chance (30 to 90 % input).` */
export function partsTold({ share, low, high }: VarianceShare): string {
  const bounds = `${number(Math.round(100 * low))} to ${number(Math.round(100 * high))} % input`;
  // A share that may be nothing is no two thirds.
  if (low <= 0) return `So few draws do not tell how much of that is input, how much chance (${bounds}).`;
  if (share > 0.95) return `Almost all of that is input (${bounds}).`;
  if (share < 0.05) return `Almost all of that is chance (${bounds}).`;
  const [, words, rest] = FRACTIONS.reduce((best, each) =>
    Math.abs(each[0] - share) < Math.abs(best[0] - share) ? each : best,
  );
  return `About ${words} of that is input, ${rest} chance (${bounds}).`;
}

/** `7 guesses and 2 estimates are not in this.` */
function leftTold({ left }: InputsResult): string {
  const of = (is: string): number => left.filter(({ why }) => why === is).length,
    guesses = of('guess'),
    estimates = of('estimate'),
    others = left.length - guesses - estimates;
  const parts = [
    guesses === 0 ? '' : `${exact(guesses)} ${guesses === 1 ? 'guess' : 'guesses'}`,
    estimates === 0 ? '' : count(estimates, 'estimate'),
    others === 0 ? '' : `${count(others, 'measured value')} whose spread is not told`,
  ].filter((part) => part !== '');
  if (parts.length === 0) return '';
  return `${capital(listed(parts, 'and'))} ${left.length === 1 ? 'is' : 'are'} not in this.`;
}
