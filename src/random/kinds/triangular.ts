import { mustBeInOrder } from '../check.js';
import { fillUniform } from '../streams.js';
import { always } from './constant.js';
import type { Kind } from './kind.js';

export interface Triangular {
  readonly kind: 'triangular';
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export const triangular: Kind<Triangular> = {
  check: mustBeInOrder,
  moments({ low, likely, high }) {
    const left = likely - low,
      right = high - likely;
    return {
      mean: (low + likely + high) / 3,
      variance: (left * left + left * right + right * right) / 18,
    };
  },
  least: ({ low }) => low,
  scaled: (distribution, factor) => ({
    ...distribution,
    low: distribution.low * factor,
    likely: distribution.likely * factor,
    high: distribution.high * factor,
  }),
  filling({ low, likely, high }) {
    if (low === high) return always(low);
    const width = high - low,
      peak = (likely - low) / width,
      rising = width * (likely - low),
      falling = width * (high - likely);
    return (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      for (let k = from; k < to; k++) {
        const u = out[k];
        out[k] = u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling);
      }
    };
  },
};
