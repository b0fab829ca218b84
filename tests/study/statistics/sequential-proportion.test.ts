import { describe, expect, it } from 'vitest';
import { proportion } from '../../../src/study/statistics/proportion.js';
import { sequentialProportion } from '../../../src/study/statistics/sequential-proportion.js';

type Bounds = (count: number, n: number) => { readonly low: number; readonly high: number };

/** Chance that a share of p is ever outside its bounds at these looks, by the binomial walk, exactly. */
function everOutside(p: number, looks: readonly number[], bounds: Bounds): number {
  let still = [1],
    outside = 0;
  for (let n = 1; n <= Math.max(...looks); n++) {
    const next = Array.from({ length: n + 1 }, (_, k) => (still[k] ?? 0) * (1 - p) + (still[k - 1] ?? 0) * p);
    still = next.map((chance, k) => {
      if (!looks.includes(n)) return chance;
      const { low, high } = bounds(k, n);
      if (p >= low && p <= high) return chance;
      outside += chance;
      return 0;
    });
  }
  return outside;
}
const EVERY = Array.from({ length: 120 }, (_, n) => n + 1);

describe('a share that is looked at again and again', () => {
  it('has bounds that all hold together, where Wilson intervals do not', () => {
    for (const p of [0.05, 0.3, 0.5, 0.8, 0.97])
      expect(
        everOutside(p, EVERY, (k, n) => sequentialProportion(k, n, 0.95)),
        `${p}`,
      ).toBeLessThanOrEqual(0.05);
    expect(everOutside(0.5, EVERY, (k, n) => proportion(k, n, 0.95))).toBeGreaterThan(0.25);
  });

  it('has the bounds of the formula: of n of n the lower one solves (n + 1) p^n = 1 - level', () => {
    for (const n of [1, 5, 9, 30]) {
      const { low, high, share } = sequentialProportion(n, n, 0.98);
      expect((n + 1) * low ** n).toBeCloseTo(0.02, 9);
      expect([high, share]).toEqual([1, 1]);
      expect(sequentialProportion(0, n, 0.98).high).toBeCloseTo(1 - low, 9);
    }
    // 3 of 8 at 95 %: 9 * 56 p^3 (1 - p)^5 = 0.05 at both ends.
    const { low, high } = sequentialProportion(3, 8, 0.95);
    for (const p of [low, high]) expect(9 * 56 * p ** 3 * (1 - p) ** 5).toBeCloseTo(0.05, 9);
    expect([low < 3 / 8, high > 3 / 8]).toEqual([true, true]);
  });
});
