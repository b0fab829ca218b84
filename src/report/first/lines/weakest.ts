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
  const { stated, tried, zone, isFound } = found;
  if (isFound) {
    const { brief, more } = guessLine(first);
    return { brief, more: sentences(more, `${guessesTried(tried.length, stated, at)}.`) };
  }
  return {
    brief:
      tried.length === 1 ? 'The one tried does not surely matter.' : 'None of those tried surely matters.',
    more:
      `${guessesTried(tried.length, stated, at)}: ` +
      `${tried.length === 1 ? 'it does not surely move' : 'none surely moves'} what it ships by more than ` +
      `${number(zone)} a day.`,
  };
}

/** `Of 9 guesses and estimates the four likeliest to matter were tried, at 3 a day`. */
function guessesTried(tried: number, stated: number, at: string): string {
  const where = at === '' ? '' : `, ${at}`,
    many = tried === 1 ? '' : `${inWords(tried)} `;
  if (stated === 1) return `The only guess or estimate was tried${where}`;
  return tried < stated
    ? `Of ${exact(stated)} guesses and estimates the ${many}likeliest to matter ` +
        `${tried === 1 ? 'was' : 'were'} tried${where}`
    : `All ${exact(stated)} guesses and estimates were tried${where}`;
}

/** `Nine guesses and estimates were tried, two were not.`; '' where there are none. */
export function guessesVaried(tried: number, left: number): string {
  if (tried === 0) return '';
  const what = tried === 1 ? 'guess or estimate was' : 'guesses and estimates were';
  return (
    `${capital(inWords(tried))} ${what} tried` +
    `${left === 0 ? '' : `, ${inWords(left)} ${left === 1 ? 'was' : 'were'} not`}.`
  );
}

/** Both ends of a guess, the one that moves it more first. */
export function guessLine(
  { basis, words, now, ends: [most, other] }: Omit<GuessTried, 'path'>,
  each = ' a day',
): Line {
  if (most === undefined) return NO_LINE;
  const [, counted] = /^the number of (.*)$/.exec(words) ?? [],
    // One is not counted: `1 painters`.
    isMany = counted !== undefined && /^(?!1$)\d+$/.test(now),
    what = isMany ? `${now} ${counted}` : `${words}, ${valueTold(now)}`;
  return {
    brief:
      `${capital(basis === 'guess' ? what : `an ${basis}: ${what}`)}; ` +
      `with ${valueTold(most.value)}, ${gainedText(most.gain, each)}.`,
    more:
      capital(gainBetween(most.gain, each)) +
      `${other === undefined ? '' : `; with ${valueTold(other.value)}, ${gain(other.gain)}`}.`,
  };
}
