import { exp, log, log1p } from '../../../random/elementary.js';
import { logGamma1p } from '../../../random/log-gamma.js';

const NEGLIGIBLE = 1e-16,
  TINY = 1e-300;

/** Ln B(a, b), both above 0. */
export const logBeta = (a: number, b: number): number =>
  logGamma1p(a) + logGamma1p(b) - logGamma1p(a + b) + log((a + b) / (a * b));

/**
 * I_x(a, b), the cumulative curve of a beta, to about 13 digits: by the continued fraction on the side where
 * it is short (NIST Digital Library of Mathematical Functions, 8.17.22 and 8.17.4, by Lentz's method; from
 * memory).
 * @param a above 0
 * @param b above 0
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x > 0)) return 0;
  if (x >= 1) return 1;
  const front = exp(a * log(x) + b * log1p(-x) - logBeta(a, b));
  return x < (a + 1) / (a + b + 2)
    ? (front * fraction(x, a, b)) / a
    : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1,
    d = 1 / notZero(1 - ((a + b) * x) / (a + 1)),
    h = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / notZero(1 + even * d);
    c = notZero(1 + even / c);
    h *= c * d;
    d = 1 / notZero(1 + odd * d);
    c = notZero(1 + odd / c);
    const change = c * d;
    h *= change;
    if (Math.abs(change - 1) < 4 * NEGLIGIBLE) break;
  }
  return h;
}

const notZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
