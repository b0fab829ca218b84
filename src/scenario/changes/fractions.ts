/**
 * Parts of all combinations of factors with two levels each, as published: Box, Hunter & Hunter 2005,
 * Statistics for Experimenters, 2nd ed., table 6.22; NIST/SEMATECH e-Handbook of Statistical Methods, sec.
 * 5.3.3.4.7 (both from memory). A letter is a factor in the order of the file; a word of letters is what they
 * do together, and as a column the product of their signs, -1 at the first level and +1 at the second.
 */
export interface Fraction {
  readonly name: 'half' | 'quarter';
  readonly factors: number;
  /** By which letters the later ones are set: D = ABC. */
  readonly generators: readonly (readonly [letter: string, word: string])[];
  /**
   * Length of the shortest word that is always +1. III: what one does cannot be told from what two others do
   * together; IV: what two do from what two others do; V: what two do only from what three do.
   */
  readonly resolution: 'III' | 'IV' | 'V';
}

export const FRACTIONS: readonly Fraction[] = [
  { name: 'half', factors: 3, generators: [['C', 'AB']], resolution: 'III' },
  { name: 'half', factors: 4, generators: [['D', 'ABC']], resolution: 'IV' },
  { name: 'half', factors: 5, generators: [['E', 'ABCD']], resolution: 'V' },
  {
    name: 'quarter',
    factors: 5,
    generators: [
      ['D', 'AB'],
      ['E', 'AC'],
    ],
    resolution: 'III',
  },
];

export const LETTERS = 'ABCDE';

/** What two words do together: letters that are in both drop out. */
export const product = (one: string, other: string): string =>
  Array.from(LETTERS)
    .filter((letter) => one.includes(letter) !== other.includes(letter))
    .join('');

/** Words that are +1 in every combination of the fraction: I = ABD = ACE = BCDE. */
export function definingWords({ generators }: Fraction): string[] {
  const words = generators.map(([letter, word]) => product(letter, word));
  return words
    .reduce<string[]>((all, word) => [...all, ...all.map((each) => product(each, word))], [''])
    .filter((word) => word !== '')
    .sort(byLength);
}

/** Words that a fraction does not tell from this one, the shortest first. */
export const confoundedWith = (word: string, fraction: Fraction): string[] =>
  definingWords(fraction)
    .map((each) => product(word, each))
    .sort(byLength);

const byLength = (a: string, b: string): number => a.length - b.length || (a < b ? -1 : 1);

/**
 * Combinations of levels, from 0, the first factor changing fastest (standard order); of a fraction those in
 * which the signs of its generators hold.
 * @param levels of each factor; two each for a fraction
 */
export function combinations(levels: readonly number[], fraction: Fraction | null): number[][] {
  const all = levels.reduce<number[][]>(
    (before, count) =>
      Array.from({ length: count }, (_, level) => before.map((each) => [...each, level])).flat(),
    [[]],
  );
  return fraction === null
    ? all
    : all.filter((levelsOf) => definingWords(fraction).every((word) => signOf(word, levelsOf) === 1));
}

/** The product of the signs of the letters of a word. */
export const signOf = (word: string, levels: readonly number[]): number =>
  Array.from(word).reduce((sign, letter) => (levels[LETTERS.indexOf(letter)] === 0 ? -sign : sign), 1);
