import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinedP, equalChances } from '../../../src/study/chances/equal-chances.js';
import { holm } from '../../../src/study/statistics/difference.js';
import { chiSquareAbove } from '../../../src/study/statistics/functions/normal.js';

const levels = (found: readonly number[], units: readonly number[]) =>
  found.map((count, i) => ({ name: `level ${i}`, found: count, units: units[i] }));

describe('the test of equal chances', () => {
  // Fisher 1935: the lady who tastes tea, 3 of 4 cups right; p one-sided 17/70, two-sided 34/70.
  it("is that of Fisher's tea", () => {
    expect(equalChances(levels([3, 1], [4, 4]))).toEqual({
      p: expect.closeTo(34 / 70, 12) as number,
      method: 'exact',
    });
  });

  // R 4.2.2, fisher.test.
  it.each([
    [[8, 5], [30, 80], 0.00625982299994496],
    [[2, 5, 9], [40, 35, 30], 0.0136258569469474],
    [[1, 0, 3, 6], [20, 18, 25, 22], 0.0429262532228328],
    [[12, 30], [400, 380], 0.00249631254834417],
    [[0, 4], [60, 20], 0.00306339230389863],
  ])('of %j in %j is exact and has the p of R', (found, units, p) => {
    const test = equalChances(levels(found, units));
    expect(test?.method).toBe('exact');
    expect(test?.p).toBeCloseTo(p, 10);
  });

  // R 4.2.2, chisq.test(correct = FALSE).
  it.each([
    [[300, 340, 390, 360], [4000, 4000, 4200, 4100], 0.0313597986128349],
    [[150, 180, 160, 175, 190, 205], [1000, 1010, 990, 1005, 1000, 1020], 0.0365278959722593],
  ])('of %j in %j, too many tables to go through, is the chi-square of R', (found, units, p) => {
    const test = equalChances(levels(found, units));
    expect(test?.method).toBe('chi-square');
    expect(test?.p).toBeCloseTo(p, 10);
  });

  // R 4.2.2, chisq.test(simulate.p.value = TRUE, B = 1e6); chi-square itself would say 0.0144.
  it('of 25 small levels draws tables, and has the p of R', () => {
    const found = [1, 0, 2, 0, 0, 1, 2, 0, 0, 1, 0, 2, 0, 0, 1, 0, 0, 0, 2, 1, 0, 0, 3, 0, 1],
      units = Array.from({ length: 25 }, (_, i) => [3, 2, 4, 3, 5][i % 5]),
      test = equalChances(levels(found, units));
    expect(test?.method).toBe('drawn');
    expect(Math.abs(test!.p - 0.006264)).toBeLessThan(0.0025); // three standard errors of 9,999 draws
    expect(equalChances(levels(found, units))).toEqual(test);
  });

  it('does not depend on the order of levels, nor on what counts as found', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(12), fc.nat(12)), { minLength: 2, maxLength: 4 }), (counts) => {
        const of = counts.map(([found, rest], i) => ({ name: `${i}`, found, units: found + rest })),
          p = equalChances(of)?.p;
        if (p === undefined) return;
        expect(equalChances([...of].reverse())?.p).toBeCloseTo(p, 9);
        expect(equalChances(of.map((one) => ({ ...one, found: one.units - one.found })))?.p).toBeCloseTo(
          p,
          9,
        );
      }),
    );
  });

  it('is none of one level, says 1 of none found, and refuses more found than units', () => {
    expect(equalChances(levels([3], [9]))).toBeNull();
    expect(equalChances(levels([3, 0], [9, 0]))).toBeNull();
    expect(equalChances(levels([0, 0], [9, 4]))).toEqual({ p: 1, method: 'exact' });
    expect(() => equalChances(levels([5, 1], [4, 4]))).toThrow('0 <= found <= units, got 5 of 4');
  });
});

describe('chi-square', () => {
  // In any table: 3.841 and 11.070 are the 5 % points of 1 and 5 degrees of freedom.
  it.each([
    [3.841458821, 1],
    [11.0704976935, 5],
  ])('%d is the 5 %% point of %d degrees of freedom', (x, freedom) => {
    expect(chiSquareAbove(x, freedom)).toBeCloseTo(0.05, 9);
  });

  // Two p-values: p1 p2 (1 - ln(p1 p2)), which is closed.
  it("combines two p-values as Fisher's formula for two does", () => {
    expect(combinedP([0.1, 0.2])).toBeCloseTo(0.02 * (1 - Math.log(0.02)), 12);
  });
});

// R 4.2.2, p.adjust(c(0.03, 0.004, 0.2, 0.012), 'holm').
it('adjusts p-values as Holm does', () => {
  const adjusted = [0.06, 0.016, 0.2, 0.036];
  holm([0.03, 0.004, 0.2, 0.012]).forEach((p, i) => {
    expect(p).toBeCloseTo(adjusted[i], 12);
  });
});
