import type { NamedLevels } from '../../scenario/changes/factors.js';
import { LETTERS } from '../../scenario/changes/fractions.js';
import type { Contrast } from './contrasts.js';

const level = (factors: NamedLevels, f: number, l: number): string => factors[f]?.levels[l]?.name ?? '';

/**
 * `colour booths from 1 to 2`; of two together their names, `colour booths with painters`, and of one that
 * has more than two levels the level that it goes to.
 */
export function effectName(factors: NamedLevels, { factors: of, from, to, kind }: Contrast): string {
  const span = (i: number): string =>
    `${level(factors, of[i] ?? 0, from[i] ?? 0)} to ${level(factors, of[i] ?? 0, to[i] ?? 0)}`;
  const name = (i: number): string => factors[of[i] ?? 0]?.name ?? '';
  if (kind === 'alone') return `${name(0)} from ${span(0)}`;
  const part = (i: number): string =>
    (factors[of[i] ?? 0]?.levels.length ?? 0) > 2
      ? `${name(i)} ${level(factors, of[i] ?? 0, to[i] ?? 0)}`
      : name(i);
  return `${part(0)} with ${part(1)}`;
}

/** A word of letters in names: `painters with spread`. */
export const wordInNames = (factors: NamedLevels, word: string): string =>
  Array.from(word, (letter) => factors[LETTERS.indexOf(letter)]?.name ?? letter).join(' with ');
