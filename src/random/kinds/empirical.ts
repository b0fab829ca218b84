import { mustBeFinite, refuse } from '../check.js';
import { fillUniform } from '../streams.js';
import { leastValue, weightedMoments } from './discrete.js';
import type { Kind } from './kind.js';

/** Observed values, each as likely as the next. */
export interface Empirical {
  readonly kind: 'empirical';
  readonly values: readonly number[];
}

export const empirical: Kind<Empirical> = {
  check({ values }) {
    if (values.length === 0) refuse('empirical values', 'one number or more', 'none');
    values.forEach((value, k) => {
      mustBeFinite(`empirical values[${k}]`, value);
    });
  },
  moments: ({ values }) =>
    weightedMoments(
      values,
      values.map(() => 1),
    ),
  least: ({ values }) => leastValue(values),
  scaled: (distribution, factor) => ({
    ...distribution,
    values: distribution.values.map((value) => value * factor),
  }),
  filling(distribution) {
    const values = Float64Array.from(distribution.values),
      count = values.length;
    return (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      for (let k = from; k < to; k++) out[k] = values[Math.floor(out[k] * count)];
    };
  },
};
