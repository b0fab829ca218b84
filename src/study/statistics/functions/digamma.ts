import { log } from '../../../random/elementary.js';

/** From here on the asymptotic series below are exact to the last digits. */
const LARGE = 10;

/**
 * Psi(x), the derivative of ln Gamma(x), for x > 0, to about 14 digits: the recurrence psi(x + 1) = psi(x) +
 * 1/x up to a large x, there the asymptotic series (Abramowitz & Stegun 1964, 6.3.5 and 6.3.18).
 */
export function digamma(x: number): number {
  let below = 0,
    z = x;
  for (; z < LARGE; z++) below += 1 / z;
  const s = 1 / (z * z);
  const series =
    s * (1 / 12 - s * (1 / 120 - s * (1 / 252 - s * (1 / 240 - s * (1 / 132 - (s * 691) / 32760)))));
  return log(z) - 1 / (2 * z) - series - below;
}

/** Psi'(x) for x > 0, to about 14 digits (the same, 6.4.6 and 6.4.12). */
export function trigamma(x: number): number {
  let below = 0,
    z = x;
  for (; z < LARGE; z++) below += 1 / (z * z);
  const s = 1 / (z * z);
  const series = s * (1 / 6 - s * (1 / 30 - s * (1 / 42 - s * (1 / 30 - s * (5 / 66 - (s * 691) / 2730)))));
  return (1 + 1 / (2 * z) + series) / z + below;
}
