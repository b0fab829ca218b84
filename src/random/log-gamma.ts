import { log, log1p } from './elementary.js';

/**
 * ζ(k) - 1 for k = 2, 3, .. 26 (the table of Abramowitz & Stegun 1964, chapter 23), reckoned anew by
 * Euler-Maclaurin sums.
 */
const ZETA_LESS_ONE = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.002008392826082214, 0.0009945751278180853,
  0.0004941886041194646, 0.0002460865533080483, 0.0001227133475784891, 6.124813505870483e-5,
  3.058823630702049e-5, 1.528225940865187e-5, 7.637197637899763e-6, 3.81729326499984e-6, 1.908212716553939e-6,
  9.539620338727962e-7, 4.769329867878066e-7, 2.38450502727733e-7, 1.192199259653111e-7, 5.960818905125948e-8,
  2.980350351465228e-8, 1.490155482836504e-8,
];
const EULER = 0.5772156649015329;
/** From here on Stirling's series is exact to the last digits. */
const LARGE = 15;

/**
 * Ln Γ(1 + x) for x >= 0, to about 15 digits, also close to its zeros at 0 and 1. The recurrence Γ(1 + x) = x
 * Γ(x) leads to the series about 1 (Abramowitz & Stegun 1964, 6.1.15 and 6.1.33); a large x to Stirling's
 * (6.1.41).
 */
export function logGamma1p(x: number): number {
  if (x >= LARGE) return stirling(1 + x);
  let rest = x,
    product = 1;
  while (rest > 0.5) product *= rest--;
  let sum = 0;
  for (let k = ZETA_LESS_ONE.length + 1; k >= 2; k--) sum = ZETA_LESS_ONE[k - 2] / k - rest * sum;
  return log(product) + (rest * (1 - EULER) - log1p(rest) + rest * rest * sum);
}

function stirling(z: number): number {
  const square = 1 / (z * z);
  const series =
    (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) / z;
  return (z - 0.5) * log(z) - z + log(2 * Math.PI) / 2 + series;
}
