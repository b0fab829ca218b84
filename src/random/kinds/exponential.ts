import { log } from '../elementary.js';
import { fillUniform } from '../streams.js';
import type { Kind } from './kind.js';
import { mustBePositive, scaling } from './kind.js';

export interface Exponential {
  readonly kind: 'exponential';
  readonly mean: number;
}

export const exponential: Kind<Exponential> = {
  check({ mean }) {
    mustBePositive('exponential mean', mean);
  },
  moments: ({ mean }) => ({ mean, variance: mean * mean }),
  least: () => 0,
  scaled: scaling('mean'),
  filling:
    ({ mean }) =>
    (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      for (let k = from; k < to; k++) out[k] = -mean * log(out[k]);
    },
};
