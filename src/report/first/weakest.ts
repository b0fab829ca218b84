import { exact, number } from '../../study/format.js';
import type { WeakestResult } from '../../study/reliefs/values/weakest.js';
import { gain } from './first.js';
import { valueTold } from './value-told.js';

/**
 * `Weakest guess: the number of painters on the late shift, 6: with 5 it ships 0.24 a day less (0.19 to
 * 0.28); with 7, 0.15 more.`, or that none of those tried matters; '' where none was tried.
 * @param ships what is said of the build: `it ships`
 * @param at where they were tried: ` at 3.85 a day`
 */
export function weakestText(found: WeakestResult | null, ships = 'it ships', at = ''): string {
  const [first] = found?.tried ?? [];
  if (found === null || first === undefined) return '';
  const { stated, tried, zone, isFound } = found,
    some = exact(tried.length),
    isSome = tried.length < stated;
  if (!isFound)
    return (
      (isSome
        ? `Of ${exact(stated)} guesses and estimates the ${some} likeliest to matter were tried: `
        : `Guesses and estimates tried: ${some}; `) +
      `none surely moves what it ships by more than ${number(zone)} a day.`
    );
  const [most, other] = first.ends;
  if (most === undefined) return '';
  return (
    `Weakest ${first.basis}${isSome ? ` of ${some} tried${at}` : at === '' ? '' : `, tried${at}`}: ` +
    `${first.words}, ${valueTold(first.now)}: ` +
    `with ${valueTold(most.value)} ${ships} ${gain(most.gain, ' a day')}` +
    `${other === undefined ? '' : `; with ${valueTold(other.value)}, ${gain(other.gain)}`}.`
  );
}
