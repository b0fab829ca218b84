import { describe, expect, it } from 'vitest';
import { power, wholePower } from '../../src/random/power.js';

describe('powers by functions that have the same bits everywhere', () => {
  it('agree with `**` of this engine to thirteen digits', () => {
    for (const base of [1e-9, 0.3, 0.9999, 1, 1.5, 2, 37, 4_000])
      for (const exponent of [-3.5, -0.3219280948873623, 0, 1 / 3, 0.5, 1, 2, 7])
        expect(power(base, exponent) / base ** exponent).toBeCloseTo(1, 13);
  });

  it('are exact at one and at zero, as learning needs for the first unit', () => {
    expect([power(1, -0.32), power(0, 0.68), power(0, 0), power(0, -1)]).toEqual([1, 0, 1, Infinity]);
  });

  it('of whole exponents keep the sign of the base', () => {
    expect([wholePower(-2, 3), wholePower(-2, 4), wholePower(7, 0), wholePower(0, 0)]).toEqual([
      -8, 16, 1, 1,
    ]);
  });
});
