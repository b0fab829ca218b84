import { exp, expm1, log } from '../elementary.js';
import { toExpOfLine } from '../exponential-function.js';
import { fillNormal } from '../ziggurat.js';
import { always } from './constant.js';
import type { Kind } from './kind.js';
import { mustBeFinite, mustNotBeNegative } from './kind.js';

/** Its logarithm is a normal with mean `mu` and standard deviation `sigma`. */
export interface Lognormal {
  readonly kind: 'lognormal';
  readonly mu: number;
  readonly sigma: number;
}

export const lognormal: Kind<Lognormal> = {
  check({ mu, sigma }) {
    mustBeFinite('lognormal mu', mu);
    mustNotBeNegative('lognormal sigma', sigma);
  },
  moments({ mu, sigma }) {
    const mean = exp(mu + (sigma * sigma) / 2);
    return { mean, variance: mean * mean * expm1(sigma * sigma) };
  },
  least: ({ mu, sigma }) => (sigma === 0 ? exp(mu) : 0),
  scaled: (distribution, factor) => ({ ...distribution, mu: distribution.mu + log(factor) }),
  filling({ mu, sigma }) {
    if (sigma === 0) return always(exp(mu));
    return (out, from, to, state, at) => {
      fillNormal(out, from, to, state, at);
      toExpOfLine(out, from, to, mu, sigma);
    };
  },
};
