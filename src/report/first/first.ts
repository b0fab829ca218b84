import type { Basis } from '../../scenario/types/scenario.js';
import type { ConstraintResult, Tried } from '../../study/constraint/results.js';
import { calledThing, helps } from '../../study/constraint/sentence.js';
import { capital, count, exact, intervalName, mean, number, uncapital } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { boundsOf, isSame, negated } from '../../study/statistics/estimate.js';
import type { Proportion } from '../../study/statistics/proportion.js';
import { eachShift } from '../constraint.js';
import { figure, range } from './figures.js';

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
  /** What to do about it and what that gains; '' where that is for the next command to find out. */
  readonly toDo: string;
  /** The command that would find out more, and what. */
  readonly next: { readonly what: string; readonly command: string };
  /** Dates and money, a sentence each. */
  readonly whenAndCost: readonly string[];
  /** The weakest that it rests on. */
  readonly rests: string;
  /** What else has to be known of it, in small print. */
  readonly besides: string;
  /** What the picture on the first screen shows, and what else has to be said of it; '' for nothing. */
  readonly picture: { readonly title: string; readonly more: string };
}

/** `between 3.4 and 3.5`, or that there is no interval. */
export function between(estimate: Estimate, scale = 1): string {
  const { low, high, needs } = estimate;
  if (isSame(estimate)) return `${mean(estimate, scale)} in every build`;
  if (needs !== undefined)
    return `about ${mean(estimate, scale)}, from too few builds to say how far chance moves that`;
  return low === null || high === null
    ? 'how far chance moves that is not known'
    : `between ${range(estimate, scale).replace(' to ', ' and ')}`;
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

/** `95 % sure, 100 simulated builds`. */
export const how = ({ level, n }: Estimate): string =>
  `${intervalName(level).replace(' CI', '')} sure, ${count(n, 'simulated build')}`;

/** The same where intervals are wider, so that all that is told holds with `level`. */
export const howTogether = ({ n }: Estimate, level: number): string =>
  `${number(level * 100)} % sure that all figures here hold, ${count(n, 'simulated build')}`;

/** `none of 30 builds ships`, `all 30 builds ship`. */
export function shipIt({ count: some, n: all }: Pick<Proportion, 'count' | 'n'>, what = 'build'): string {
  const builds = count(all, what);
  if (some === all) return all === 1 ? 'the one build ships' : `all ${builds} ship`;
  return some === 0
    ? `none of ${builds} ships`
    : `${exact(some)} of ${builds} ${some === 1 ? 'ships' : 'ship'}`;
}

/** `0.30 a day more (0.24 to 0.36)`, `0.07 a day less (..)`; what lies on both sides of 0 says so. */
export function gain(difference: Estimate, each = ''): string {
  const { low, high } = difference,
    isLess = difference.mean < 0,
    size = isLess ? negated(difference) : difference,
    side = isLess ? 'less' : 'more';
  if (isSame(difference)) return `${mean(size)}${each} ${side} in every build`;
  if (low === null || high === null || low >= 0 || high <= 0)
    return `${figure(size)}${each} ${side} (${range(size)})`;
  const [less = '', more = ''] = range(difference).replace('-', '').split(' to ');
  return `between ${less}${each} less and ${more} more`;
}

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** `27 April 2028` of an ISO date. */
export const dateText = (iso: string): string => DAY.format(Date.parse(iso));

/**
 * What stops it: what was tried of it, and what came next; else why it is not known.
 * @param when of which build that is told: `with “more painters”`
 */
export function whyText(found: ConstraintResult, when = ''): string {
  const { culprit, sentence } = found;
  if (culprit === null)
    return capital(
      when === ''
        ? eachShift(sentence, found)
        : `${when.replace(/,$/, '')}: ${uncapital(eachShift(sentence, found))}`,
    );
  return (
    `${capital(`${when === '' ? '' : `${when} it is `}${calledThing(culprit.thing)}`)}: ` +
    `${eachShift(culprit.what, found)} brings ` +
    `${figure(culprit.gain)} a day (${range(culprit.gain)}).${nextBest(found)}`
  );
}

/** The best of what else was tried, and whether that brings less, as much or more by its mean. */
function nextBest(found: ConstraintResult): string {
  const { culprit, tried, zone } = found,
    others = tried.filter(({ what }) => what !== culprit?.what),
    [best] = others.filter((each) => helps(each, zone)).sort((a, b) => b.gain.mean - a.gain.mean);
  if (others.length === 0) return '';
  if (best === undefined)
    return others.length === 1
      ? ' The other thing tried brings too little to matter.'
      : ` None of the ${exact(others.length)} other things tried brings enough to matter.`;
  const ahead = best.gain.mean - (culprit?.gain.mean ?? 0),
    how =
      ahead > zone ? 'More still' : ahead >= -zone ? 'As much' : `Next best of ${exact(tried.length)} tried`;
  return ` ${how}: ${toldOf(best, found)}.`;
}

const toldOf = (tried: Tried, found: ConstraintResult): string =>
  `${eachShift(tried.what, found)}, ${figure(tried.gain)} (${range(tried.gain)})`;

/** What is known of where values come from; guesses first. */
export function restsOn(said: readonly { readonly basis: Basis; readonly words: string }[]): string {
  const guesses = said.filter(({ basis }) => basis === 'guess').length;
  if (said.length === 0) return 'The scenario does not say where any of its inputs comes from.';
  return guesses === 0
    ? `None of the ${count(said.length, 'input')} whose origin is stated is a guess.`
    : `${exact(guesses)} of the ${count(said.length, 'input')} whose origin is stated ` +
        `${guesses === 1 ? 'is a guess' : 'are guesses'}.`;
}

/** The question, and what the scenario notes of itself. */
export const asking = (scenario: { readonly note: string | null }, question: string): string =>
  sentences(question, noted(scenario));

/** Longest first sentence of a note that the first screen has room for. */
const LONGEST_NOTE = 80;

/**
 * `The scenario notes: “Invented data.”`, the first sentence of its note; '' where that is none or too
 * long.
 */
function noted({ note }: { readonly note: string | null }): string {
  const first = /^.*?[.!](?=\s|$)/s.exec(note?.trim() ?? '')?.[0] ?? note?.trim() ?? '';
  return first === '' || first.length > LONGEST_NOTE ? '' : `The scenario notes: “${first}”`;
}

/** One after the other; those that say nothing are left out. */
export const sentences = (...all: readonly string[]): string => all.filter((each) => each !== '').join(' ');

/**
 * Said on every first screen: chance is in the intervals, mistakes are not; and pages of one scenario stand
 * side by side.
 */
export const INPUTS =
  'Intervals cover chance, not wrong inputs. Other pages try other builds: their figures differ a little.';
