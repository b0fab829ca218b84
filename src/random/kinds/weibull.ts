import { exp, expm1, log, log1p } from '../elementary.js';
import { logGamma1p } from '../log-gamma.js';
import { fillUniform } from '../streams.js';
import type { Kind } from './kind.js';
import { mustBePositive, scaling } from './kind.js';

export interface Weibull {
  readonly kind: 'weibull';
  readonly shape: number;
  readonly scale: number;
}

export const weibull: Kind<Weibull> = {
  check({ shape, scale }) {
    mustBePositive('weibull shape', shape);
    mustBePositive('weibull scale', scale);
  },
  moments({ shape, scale }) {
    const mean = scale * weibullUnitMean(1 / shape);
    return { mean, variance: mean * mean * expm1(weibullLogSpread(1 / shape)) };
  },
  least: () => 0,
  scaled: scaling('scale'),
  filling({ shape, scale }) {
    const power = 1 / shape;
    return (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      // scale (-ln u)^power; exp and log take half the time of `**`.
      for (let k = from; k < to; k++) out[k] = scale * exp(power * log(-log(out[k])));
    };
  },
};

/**
 * Ln(1 + cv²) of a Weibull whose shape is 1 / `power`: ln Γ(1 + 2/k) - 2 ln Γ(1 + 1/k). From the moments
 * scale^r Γ(1 + r/k) (N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 1, 1994,
 * chapter 21).
 */
function weibullLogSpread(power: number): number {
  return logGamma1p(2 * power) - 2 * logGamma1p(power);
}

/** The mean of a Weibull of scale 1 whose shape is 1 / `power`: Γ(1 + 1/k). */
export function weibullUnitMean(power: number): number {
  return exp(logGamma1p(power));
}

/**
 * 1 / shape of the Weibull with the coefficient of variation `cv` > 0. It grows with the spread: bisection.
 */
export function weibullPowerOf(cv: number): number {
  const wanted = log1p(cv * cv);
  let low = 0;
  let high = 1;
  while (weibullLogSpread(high) < wanted) {
    low = high;
    high *= 2;
  }
  for (;;) {
    const middle = (low + high) / 2;
    // The two have met when no number lies between them.
    if (middle <= low || middle >= high) return middle;
    if (weibullLogSpread(middle) < wanted) low = middle;
    else high = middle;
  }
}
