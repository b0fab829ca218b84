import { capital, exact, number } from '../../../study/format.js';
import type { GuessTried, WeakestResult } from '../../../study/reliefs/values/weakest.js';
import { valueTold } from '../figures.js';
import { gain, gainBetween, gainedText, type Line, NO_LINE, sentences } from '../first.js';

/**
 * `Painters on the late shift, 6: with 5, 0.24 a day less (4 tried).`, or that none of
 * those tried matters; nothing where none was tried.
 * @param at on which build, or at which rate, they were tried
 */
export function weakestLine(found: WeakestResult | null, at = ''): Line {
  const [first] = found?.tried ?? [];
  if (found === null || first === undefined) return NO_LINE;
  const { stated, tried, zone, isFound } = found,
    isSome = tried.length < stated,
    behind = `${isSome ? '' : 'all '}${exact(tried.length)} tried`,
    where = at === '' ? '' : `Tried ${at}.`;
  if (isFound) {
    const { brief, more } = guessLine(first, { behind });
    return { brief, more: sentences(more, where) };
  }
  return {
    brief: `None surely matters (${behind}).`,
    more: sentences(
      (isSome
        ? `Of ${exact(stated)} guesses and estimates the likeliest to matter were tried: `
        : 'All guesses and estimates were tried: ') +
        `none surely moves what it ships by more than ${number(zone)} a day.`,
      where,
    ),
  };
}

interface Told {
  /** Which were tried, where. */
  readonly behind?: string;
  /** Behind a figure. */
  readonly each?: string;
}

/** Both ends of a guess, the one that moves it more first. */
export function guessLine(
  { basis, words, now, ends: [most, other] }: Omit<GuessTried, 'path'>,
  { behind = '', each = ' a day' }: Told = {},
): Line {
  if (most === undefined) return NO_LINE;
  const named = words.replace(/^the number of /, ''),
    what = `${basis === 'guess' ? '' : `an ${basis}, `}${named}, ${valueTold(now)}`;
  return {
    brief:
      `${capital(what)}: with ${valueTold(most.value)}, ${gainedText(most.gain, each)}` +
      `${behind === '' ? '' : ` (${behind})`}.`,
    more:
      capital(gainBetween(most.gain, each)) +
      `${other === undefined ? '' : `; with ${valueTold(other.value)}, ${gain(other.gain)}`}.`,
  };
}
