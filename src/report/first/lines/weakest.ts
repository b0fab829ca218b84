import { inWords } from '../../../study/answer/answer.js';
import { capital, exact, number } from '../../../study/format.js';
import type { GuessTried, WeakestResult } from '../../../study/reliefs/values/weakest.js';
import { valueTold } from '../figures.js';
import { gain, gainBetween, gainedText, type Line, NO_LINE, sentences } from '../first.js';

/**
 * `6 painters on the late shift; with 5, 0.24 a day less.`, or that none of
 * those tried matters; nothing where none was tried.
 * @param at on which build, or at which rate, they were tried
 */
export function weakestLine(found: WeakestResult | null, at = ''): Line {
  const [first] = found?.tried ?? [];
  if (found === null || first === undefined) return NO_LINE;
  const { stated, tried, zone, isFound } = found,
    isSome = tried.length < stated,
    where = `${isSome ? capital(inWords(tried.length)) : `All ${inWords(tried.length)}`} tried${at === '' ? '' : ` ${at}`}.`;
  if (isFound) {
    const { brief, more } = guessLine(first);
    return { brief, more: sentences(more, where) };
  }
  return {
    brief: 'None of those tried surely matters.',
    more: sentences(
      (isSome
        ? `Of ${exact(stated)} guesses and estimates the likeliest to matter were tried: `
        : 'All guesses and estimates were tried: ') +
        `none surely moves what it ships by more than ${number(zone)} a day.`,
      where,
    ),
  };
}

/** Both ends of a guess, the one that moves it more first. */
export function guessLine(
  { basis, words, now, ends: [most, other] }: Omit<GuessTried, 'path'>,
  each = ' a day',
): Line {
  if (most === undefined) return NO_LINE;
  const [, counted] = /^the number of (.*)$/.exec(words) ?? [],
    what = counted === undefined || !/^\d+$/.test(now) ? `${words}, ${valueTold(now)}` : `${now} ${counted}`;
  return {
    brief:
      `${capital(basis === 'guess' ? what : `an ${basis}: ${what}`)}; ` +
      `with ${valueTold(most.value)}, ${gainedText(most.gain, each)}.`,
    more:
      capital(gainBetween(most.gain, each)) +
      `${other === undefined ? '' : `; with ${valueTold(other.value)}, ${gain(other.gain)}`}.`,
  };
}
