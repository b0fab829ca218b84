import { fillUniform } from '../streams.js';
import { always } from './constant.js';
import type { Kind } from './kind.js';
import { mustBeFinite, refuse, scaling } from './kind.js';

export interface Uniform {
  readonly kind: 'uniform';
  readonly low: number;
  readonly high: number;
}

export const uniform: Kind<Uniform> = {
  check({ low, high }) {
    mustBeFinite('uniform low', low);
    mustBeFinite('uniform high', high);
    if (low > high) refuse('uniform high', `at least low (${low})`, high);
  },
  moments: ({ low, high }) => ({ mean: (low + high) / 2, variance: ((high - low) * (high - low)) / 12 }),
  least: ({ low }) => low,
  scaled: scaling('low', 'high'),
  filling({ low, high }) {
    if (low === high) return always(low);
    const width = high - low;
    return (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      for (let k = from; k < to; k++) out[k] = low + width * out[k];
    };
  },
};
