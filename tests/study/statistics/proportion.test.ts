import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proportion } from '../../../src/study/statistics/proportion.js';

describe('Wilson interval', () => {
  // Newcombe 1998, Stat. Med. 17, 857-872, table I, score method without continuity correction; from memory.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %d in %d is %d to %d in Newcombe's worked examples", (count, n, low, high) => {
    const interval = proportion(count, n, 0.95);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });

  it('has bounds at which the score test is just at its limit: (p - bound)^2 = z^2 bound (1 - bound) / n', () => {
    // That is how Wilson defined them; z = 1.959964 is in any table.
    const { share, low, high, n } = proportion(23, 40, 0.95);
    for (const bound of [low, high])
      expect((share - bound) ** 2).toBeCloseTo((1.959964 ** 2 * bound * (1 - bound)) / n, 7);
  });

  it('stays within 0..1, holds the share, and mirrors', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 2000 })
          .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n))),
        ([count, n]) => {
          const one = proportion(count, n, 0.95),
            other = proportion(n - count, n, 0.95);
          expect(one.low).toBeGreaterThanOrEqual(0);
          expect(one.high).toBeLessThanOrEqual(1);
          expect(one.low).toBeLessThanOrEqual(one.share);
          expect(one.high).toBeGreaterThanOrEqual(one.share);
          expect(other.low).toBeCloseTo(1 - one.high, 12);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it('of none among none is an error', () => {
    expect(() => proportion(0, 0, 0.95)).toThrow('got 0 of 0');
  });
});
