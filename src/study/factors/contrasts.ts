import { confoundedWith, type Fraction, LETTERS } from '../../scenario/changes/fractions.js';
import type { EffectResult } from './results.js';

/** An effect as a sum of the means of all combinations with these weights. */
export interface Contrast
  extends Pick<EffectResult, 'kind' | 'factors' | 'from' | 'to' | 'word' | 'mixedWith'> {
  /** One for each combination. */
  readonly weights: readonly number[];
}

/**
 * Every effect that the combinations show: of each factor from each level to each later one, then of each two
 * factors from their first levels to each other one. Of a fraction each that cannot be told from another
 * comes once, under the shorter word (Box, Hunter & Hunter 2005, Statistics for Experimenters, ch. 5 and 6;
 * from memory, effects of two by differences, not by halves).
 * @param levels how many each factor has
 * @param combinations numbers of levels, as run
 */
export function contrastsOf(
  levels: readonly number[],
  combinations: readonly (readonly number[])[],
  fraction: Fraction | null,
): Contrast[] {
  const mixed = (word: string): string[] => (fraction === null ? [] : confoundedWith(word, fraction)),
    letter = (f: number): string => LETTERS.charAt(f);
  const alone = levels.flatMap((many, f) =>
    pairsBelow(many).map(
      ([from, to]): Contrast => ({
        ...{ kind: 'alone', factors: [f], from: [from], to: [to], word: letter(f) },
        mixedWith: mixed(letter(f)),
        weights: sum(meanWhere(combinations, [[f, to]]), meanWhere(combinations, [[f, from]], -1)),
      }),
    ),
  );
  const together = pairsBelow(levels.length).flatMap(([f, g]) => {
    const word = letter(f) + letter(g),
      others = mixed(word);
    if (others.some((other) => other.length === 1 || (other.length === 2 && other < word))) return [];
    return later(levels[f]).flatMap((i) =>
      later(levels[g]).map(
        (j): Contrast => ({
          ...{ kind: 'together', factors: [f, g], from: [0, 0], to: [i, j], word, mixedWith: others },
          weights: sum(
            meanWhere(combinations, [
              [f, i],
              [g, j],
            ]),
            meanWhere(
              combinations,
              [
                [f, i],
                [g, 0],
              ],
              -1,
            ),
            meanWhere(
              combinations,
              [
                [f, 0],
                [g, j],
              ],
              -1,
            ),
            meanWhere(combinations, [
              [f, 0],
              [g, 0],
            ]),
          ),
        }),
      ),
    );
  });
  return [...alone, ...together];
}

/** [0, 1], [0, 2], [1, 2] .. of numbers below this. */
export const pairsBelow = (many: number): [number, number][] =>
  Array.from({ length: many }, (_, i) =>
    Array.from({ length: many - i - 1 }, (_, j): [number, number] => [i, i + 1 + j]),
  ).flat();

const later = (many = 0): number[] => Array.from({ length: many - 1 }, (_, i) => i + 1);

type At = readonly [factor: number, level: number];
const isAt = (combination: readonly number[], at: readonly At[]): boolean =>
  at.every(([factor, level]) => combination[factor] === level);

/** The numbers of the combinations with such levels. */
export const numbersAt = (combinations: readonly (readonly number[])[], at: readonly At[]): number[] =>
  combinations.flatMap((each, c) => (isAt(each, at) ? [c] : []));

/** Weights of the mean over the combinations with such levels. */
function meanWhere(combinations: readonly (readonly number[])[], at: readonly At[], sign = 1): number[] {
  const many = numbersAt(combinations, at).length;
  return combinations.map((each) => (isAt(each, at) ? sign / many : 0));
}

const sum = (...all: readonly (readonly number[])[]): number[] =>
  (all[0] ?? []).map((_, c) => all.reduce((total, weights) => total + (weights[c] ?? 0), 0));
