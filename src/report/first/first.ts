import type { Basis } from '../../scenario/types/scenario.js';
import { count, exact, intervalName, mean, number } from '../../study/format.js';
import { SHORTFALL_ALLOWED } from '../../study/held/shortfall.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { boundsOf, isSame, negated } from '../../study/statistics/estimate.js';
import type { Proportion } from '../../study/statistics/proportion.js';
import { figure, range, roundRange } from './figures.js';

/** One of the answers of a first screen; '' for nothing. */
export interface Line {
  /** Read at a glance, and true by itself: a line or two. */
  readonly brief: string;
  /** What is told behind it. */
  readonly more: string;
}

/** What a reader of two minutes is told, from the top down: each line complete in itself. */
export interface FirstScreen {
  /** The scenario, and what it notes of itself. */
  readonly about: string;
  /** As the planner would ask it. */
  readonly question: string;
  /** At most twelve words. */
  readonly answer: string;
  /** How sure that is, in words. */
  readonly sure: Line;
  readonly stops: Line;
  /** What to do about it, what that gains and costs. */
  readonly toDo: Line;
  /** When the last unit is out. */
  readonly when: Line;
  /** The weakest that it rests on. */
  readonly rests: Line;
  /** The command that would find out more, and what. */
  readonly next: { readonly what: string; readonly command: string };
  /** What else has to be known of it, in small print. */
  readonly besides: string;
  /** What the picture on the first screen shows, and what else has to be said of it; '' for nothing. */
  readonly picture: { readonly title: string; readonly more: string };
  /** Names of lines that answer another question than on most pages. */
  readonly names?: Readonly<Partial<Record<(typeof LINES)[number][0], string>>>;
}

/** The answers that stand on every first screen in the same order, and under the same names on most. */
export const LINES = [
  ['sure', 'How sure'],
  ['stops', 'What stops it'],
  ['toDo', 'What to do'],
  ['when', 'By when'],
  ['rests', 'Weakest guess'],
] as const;

/** Those of them that say something, with their names. */
export const linesOf = (first: FirstScreen): (Line & { readonly key: string; readonly name: string })[] =>
  LINES.map(([key, name]) => {
    const { brief, more } = first[key];
    return { brief: inPrint(brief), more: inPrint(more), key, name: first.names?.[key] ?? name };
  }).filter(({ brief }) => brief !== '');

/** Names that results have in straight quotes, in those of print: `the calendar “days”`. */
export const inPrint = (text: string): string => text.replaceAll(/"([^"\n]*)"/g, '“$1”');

export const NO_LINE: Line = { brief: '', more: '' };

/** One after the other; those that say nothing are left out. */
export const sentences = (...all: readonly string[]): string => all.filter((each) => each !== '').join(' ');

export const whole = ({ brief, more }: Line): string => sentences(brief, more);

/** `3.4 to 3.5`, or that there is no interval; `beside` another one, see `roundRange`. */
export function ends(estimate: Estimate, scale = 1, beside?: Estimate): string {
  const { low, high, needs } = estimate;
  if (isSame(estimate)) return `${mean(estimate, scale)} in every build`;
  if (needs !== undefined)
    return `about ${mean(estimate, scale)}, from too few builds to say how far chance moves that`;
  return low === null || high === null
    ? 'how far chance moves that is not known'
    : roundRange(estimate, scale, beside);
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

/** `95 % sure`. */
export const surely = (level: number): string => `${intervalName(level).replace(' CI', '')} sure`;

/** `95 % sure, 100 simulated builds`. */
export const how = (level: number, n: number): string => `${surely(level)}, ${count(n, 'simulated build')}`;

/** The same where intervals are wider, so that all that is told holds with `level`. */
export const together = (level: number): string =>
  `The ${number(100 * level)} % are for all of these figures together.`;

/** How far what is shipped may fall short of what is asked and still count as that. */
const ALLOWED = `${number(100 * SHORTFALL_ALLOWED)} %`;
export const AT_LEAST = `at least ${number(100 * (1 - SHORTFALL_ALLOWED))} % of`;
export const COUNTS = `What is up to ${ALLOWED} less than asked counts as that.`;

/** `none of 30 simulated builds ships`, `all 30 simulated builds ship`. */
export function shipIt(
  { count: some, n: all }: Pick<Proportion, 'count' | 'n'>,
  what = 'simulated build',
): string {
  const builds = count(all, what);
  if (some === all) return all === 1 ? 'the one build ships' : `all ${builds} ship`;
  return some === 0
    ? `none of ${builds} ships`
    : `${exact(some)} of ${builds} ${some === 1 ? 'ships' : 'ship'}`;
}

/** How much more or less; null where it is the same in every build, or lies on both sides of 0. */
function sided(difference: Estimate): { readonly size: Estimate; readonly side: 'more' | 'less' } | null {
  const { low, high } = difference;
  if (isSame(difference) || (low !== null && high !== null && low < 0 && high > 0)) return null;
  return difference.mean < 0
    ? { size: negated(difference), side: 'less' }
    : { size: difference, side: 'more' };
}

/** `0.30 a day more (0.24 to 0.36)`, `0.07 a day less (..)`; what lies on both sides of 0 says so. */
export function gain(difference: Estimate, each = ''): string {
  const told = sided(difference);
  if (told !== null) return `${gainedText(difference, each)} (${range(told.size)})`;
  if (isSame(difference)) {
    const isLess = difference.mean < 0,
      size = isLess ? negated(difference) : difference;
    return `${mean(size)}${each} ${isLess ? 'less' : 'more'} in every build`;
  }
  const [less = '', more = ''] = range(difference).replace('-', '').split(' to ');
  return `between ${less}${each} less and ${more} more`;
}

/** Its interval alone: `between 0.24 and 0.36 a day more`; the whole where it has none, or two sides. */
export function gainBetween(difference: Estimate, each = ''): string {
  const told = sided(difference);
  return told === null || difference.low === null || difference.high === null
    ? gain(difference, each)
    : `between ${range(told.size).replace(' to ', ' and ')}${each} ${told.side}`;
}

/** The same without its interval; what lies on both sides of 0 keeps both. */
export function gainedText(difference: Estimate, each = ''): string {
  const told = sided(difference);
  return told === null ? gain(difference, each) : `${figure(told.size)}${each} ${told.side}`;
}

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** `27 April 2028` of an ISO date. */
export const dateText = (iso: string): string => DAY.format(Date.parse(iso));

/** `27 April` behind a date of the same year. */
export const dateBehind = (iso: string, before: string): string =>
  iso.slice(0, 4) === before.slice(0, 4) ? dateText(iso).slice(0, -5) : dateText(iso);

/** What is known of where values come from; guesses first. */
export function restsOn(said: readonly { readonly basis: Basis; readonly words: string }[]): string {
  const guesses = said.filter(({ basis }) => basis === 'guess').length;
  if (said.length === 0) return 'The scenario does not say where any of its inputs comes from.';
  return guesses === 0
    ? `None of the ${count(said.length, 'input')} whose origin is stated is a guess.`
    : `${exact(guesses)} of the ${count(said.length, 'input')} whose origin is stated ` +
        `${guesses === 1 ? 'is a guess' : 'are guesses'}.`;
}

/** Longest first sentence of a note that the first screen has room for. */
const LONGEST_NOTE = 80;

/** `Rescue tender. “Invented data.”`: its name, and the first sentence of its note if it is short enough. */
export function about({ name, note }: { readonly name: string; readonly note: string | null }): string {
  const first = /^.*?[.!](?=\s|$)/s.exec(note?.trim() ?? '')?.[0] ?? note?.trim() ?? '';
  return first === '' || first.length > LONGEST_NOTE ? name : `${name}. “${first}”`;
}

/**
 * Said on every first screen: chance is in the intervals, mistakes are not; and pages of one scenario stand
 * side by side.
 */
export const INPUTS =
  'Intervals cover chance, not wrong inputs. Other pages try other builds: their figures differ a little.';

/** The same where the measured inputs were drawn anew. */
export const DRAWN =
  'Other intervals cover chance, and inputs only as far as these draws show them. What stops it, and what ' +
  'helps, was tried with the inputs as written.';
