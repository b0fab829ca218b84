import type { Basis } from '../../scenario/types/scenario.js';
import type { ConstraintResult } from '../../study/constraint/results.js';
import { bounds, capital, count, exact, intervalName, mean, signed } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { boundsOf, isSame } from '../../study/statistics/estimate.js';

/** What a reader of two minutes is told, from the top down: each line complete in itself. */
export interface FirstScreen {
  /** As the planner would ask it. */
  readonly question: string;
  /** At most twelve words. */
  readonly answer: string;
  /** How sure that is, in words. */
  readonly sure: string;
  /** What stops it; null where no study looked. */
  readonly why: string | null;
  /** What to do about it and what that gains, or the command that would find out. */
  readonly toDo: string;
  /** Dates and money, a sentence each. */
  readonly whenAndCost: readonly string[];
  /** The weakest that it rests on. */
  readonly rests: string;
}

/** `between 3.4 and 3.5`, or that there is no interval. */
export function between(estimate: Estimate, scale = 1): string {
  const { low, high } = estimate;
  if (isSame(estimate)) return `${mean(estimate, scale)} in every build`;
  return low === null || high === null
    ? 'how far chance moves that is not known'
    : `between ${bounds(estimate, scale).replace(' to ', ' and ')}`;
}

/** The mean with the fewest digits that are still within its interval and are not another number. */
export function roughly(estimate: Estimate, other: number | null = null): string {
  const { low, high } = boundsOf(estimate);
  for (let digits = 2; digits < 6; digits++) {
    const rough = Number(estimate.mean.toPrecision(digits));
    if (rough >= low && rough <= high && rough !== other && Math.abs(rough) >= 1) return exact(rough);
  }
  return mean(estimate);
}

/** `95 %, 100 builds tried`. */
export const how = ({ level, n }: Estimate): string =>
  `${intervalName(level).replace(' CI', '')}, ${count(n, 'build')} tried`;

/** `+0.30 (0.24 to 0.36)`. */
export const gain = (difference: Estimate): string => `${signed(difference)} (${bounds(difference)})`;

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** `27 April 2028` of an ISO date. */
export const dateText = (iso: string): string => DAY.format(Date.parse(iso));

/** What stops it, without what else was tried. */
export function whyText({ culprit, sentence, tried }: ConstraintResult): string {
  if (culprit === null) return sentence;
  const { thing, what } = culprit,
    more = tried.length > 1 ? `, the most of ${exact(tried.length)} things that were tried` : '';
  return `${capital(thing.name)} stops it: ${what} brings ${gain(culprit.gain)} a day${more}.`;
}

/** What is known of where values come from; guesses first. */
export function restsOn(said: readonly { readonly basis: Basis; readonly words: string }[]): string {
  const guesses = said.filter(({ basis }) => basis === 'guess').length;
  if (said.length === 0) return 'The scenario does not say where any of its values comes from.';
  return guesses === 0
    ? `None of the ${count(said.length, 'value')} with a stated source is a guess.`
    : `${exact(guesses)} of ${count(said.length, 'value')} with a stated source ` +
        `${guesses === 1 ? 'is a guess' : 'are guesses'}.`;
}
