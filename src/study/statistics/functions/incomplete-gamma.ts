import { exp, log } from '../../../random/elementary.js';
import { logGamma1p } from '../../../random/log-gamma.js';

/** A term, or a change, smaller than this share of the sum is not seen. */
const NEGLIGIBLE = 1e-16;
/** Stands for 0 where Lentz's method would divide by it. */
const TINY = 1e-300;

/**
 * P(a, x) = (1 / Gamma(a)) times the integral of t^(a-1) e^-t from 0 to x, and Q(a, x) = 1 - P, each to about
 * 13 digits of its own: by the series below the mean, by the continued fraction above it (NIST Digital
 * Library of Mathematical Functions, 8.11.4 and 8.9.2; the latter by Lentz's method; from memory).
 * @param a above 0
 * @returns P, or Q where `upper`
 */
export function incompleteGamma(a: number, x: number, upper = false): number {
  if (!(x > 0)) return upper ? 1 : 0;
  if (x === Infinity) return upper ? 0 : 1;
  // x^a e^-x / Gamma(1 + a)
  const front = exp(a * log(x) - x - logGamma1p(a));
  if (x < a + 1) {
    const low = front * series(a, x);
    return upper ? 1 - low : low;
  }
  const high = front * a * fraction(a, x);
  return upper ? high : 1 - high;
}

function series(a: number, x: number): number {
  let term = 1,
    sum = 1;
  for (let k = 1; term > NEGLIGIBLE * sum; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a,
    c = 1 / TINY,
    d = 1 / b,
    h = d;
  for (let k = 1; k < 100_000; k++) {
    const an = k * (a - k);
    b += 2;
    d = 1 / notZero(an * d + b);
    c = notZero(b + an / c);
    const change = c * d;
    h *= change;
    if (Math.abs(change - 1) < 4 * NEGLIGIBLE) break;
  }
  return h;
}

const notZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
