import { describe, expect, it } from 'vitest';
import {
  combinations,
  confoundedWith,
  definingWords,
  FRACTIONS,
  LETTERS,
  signOf,
} from '../../../src/scenario/changes/fractions.js';

/**
 * Designs as published: Box, Hunter & Hunter 2005, Statistics for Experimenters, table 6.22, and NIST/SEMATECH
 * e-Handbook, sec. 5.3.3.4.7 (X4 = X1 X2 X3 and so on); what is confounded in them by the defining relation, as
 * in the same chapters. All from memory, letters in the place of numbers.
 */
const PUBLISHED = [
  {
    ...{ factors: 3, name: 'half', runs: 4, resolution: 'III', defining: ['ABC'] },
    confounded: { A: ['BC'], B: ['AC'], C: ['AB'] },
  },
  {
    ...{ factors: 4, name: 'half', runs: 8, resolution: 'IV', defining: ['ABCD'] },
    confounded: { A: ['BCD'], D: ['ABC'], AB: ['CD'], AC: ['BD'], AD: ['BC'] },
  },
  {
    ...{ factors: 5, name: 'half', runs: 16, resolution: 'V', defining: ['ABCDE'] },
    confounded: { A: ['BCDE'], AB: ['CDE'], DE: ['ABC'], BD: ['ACE'] },
  },
  {
    ...{ factors: 5, name: 'quarter', runs: 8, resolution: 'III', defining: ['ABD', 'ACE', 'BCDE'] },
    confounded: {
      A: ['BD', 'CE', 'ABCDE'],
      B: ['AD', 'CDE', 'ABCE'],
      C: ['AE', 'BDE', 'ABCD'],
      D: ['AB', 'BCE', 'ACDE'],
      E: ['AC', 'BCD', 'ABDE'],
      BC: ['DE', 'ABE', 'ACD'],
      BE: ['CD', 'ABC', 'ADE'],
    },
  },
] as const;

describe('parts of all combinations', () => {
  it.each(PUBLISHED)(
    'are as published: $name of $factors factors, $runs runs, resolution $resolution',
    ({ factors, name, runs, resolution, defining, confounded }) => {
      const fraction = FRACTIONS.find((each) => each.name === name && each.factors === factors)!;
      expect(fraction.resolution).toBe(resolution);
      expect(definingWords(fraction)).toEqual(defining);
      const all = combinations(
        Array.from({ length: factors }, () => 2),
        fraction,
      );
      expect(all).toHaveLength(runs);
      for (const [word, others] of Object.entries<readonly string[]>(confounded)) {
        expect(confoundedWith(word, fraction), word).toEqual(others);
        // And in the runs themselves: the columns are the same.
        for (const other of others)
          for (const levels of all) expect(signOf(word, levels)).toBe(signOf(other, levels));
      }
    },
  );

  it('hold each level of each factor, and each pair of levels of two, equally often', () => {
    for (const fraction of FRACTIONS) {
      const all = combinations(new Array<number>(fraction.factors).fill(2), fraction);
      for (let f = 0; f < fraction.factors; f++)
        for (let g = 0; g < f; g++)
          for (const [i, j] of [
            [0, 0],
            [0, 1],
            [1, 0],
            [1, 1],
          ])
            expect(all.filter((levels) => levels[f] === i && levels[g] === j)).toHaveLength(all.length / 4);
    }
  });

  it('are the only ones that are told apart: no two words of one or two letters beyond those named are the same', () => {
    for (const fraction of FRACTIONS) {
      const all = combinations(new Array<number>(fraction.factors).fill(2), fraction),
        letters = Array.from(LETTERS.slice(0, fraction.factors)),
        words = letters.flatMap((a, i) => [a, ...letters.slice(i + 1).map((b) => a + b)]);
      for (const one of words)
        for (const other of words) {
          const isSame = all.every((levels) => signOf(one, levels) === signOf(other, levels));
          expect(isSame, `${one} ${other}`).toBe(
            one === other || confoundedWith(one, fraction).includes(other),
          );
        }
    }
  });

  it('come in standard order, the first factor changing fastest, also with three levels', () => {
    expect(combinations([2, 3], null)).toEqual([
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
      [0, 2],
      [1, 2],
    ]);
  });
});
