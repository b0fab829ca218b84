import gammaln from '@stdlib/math-base-special-gammaln';
import { describe, expect, it } from 'vitest';
import { logGamma1p } from '../../src/random/log-gamma.js';

describe('logGamma1p', () => {
  it('agrees with the gammaln of @stdlib from 0.05 to 170, to 1e-13 of the value', () => {
    let worst = 0;
    for (let x = 0.05; x <= 170; x += 0.01) {
      // The reference takes 1 + x, whose rounding alone moves the value near the zeros at x = 0 and 1.
      const off = Math.abs(logGamma1p(x) - gammaln(1 + x));
      worst = Math.max(worst, off / Math.max(0.1, Math.abs(gammaln(1 + x))));
    }
    expect(worst).toBeLessThan(1e-13);
  });

  it('keeps its digits close to 0, where it is -γ x + ζ(2) x² / 2 (Abramowitz & Stegun 1964, 6.1.33)', () => {
    const x = 1e-6;
    expect(logGamma1p(x) / (-0.5772156649015329 * x + (Math.PI ** 2 / 12) * x * x)).toBeCloseTo(1, 11);
    expect(logGamma1p(0)).toBe(0);
  });

  it('is ln n! for whole numbers, on both sides of the change to the series for large x', () => {
    let logFactorial = 0;
    for (let n = 1; n <= 40; n++) {
      logFactorial += Math.log(n);
      expect(logGamma1p(n)).toBeCloseTo(logFactorial, 12);
    }
  });

  it('is ln(√π / 2) at a half', () => {
    expect(logGamma1p(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI) / 2), 15);
  });
});
