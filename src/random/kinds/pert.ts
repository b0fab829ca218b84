import { mustBeInOrder } from '../check.js';
import { always } from './constant.js';
import { fillGamma } from './gamma.js';
import type { Kind } from './kind.js';

/** A beta on [low, high] (D. G. Malcolm et al. 1959). */
export interface Pert {
  readonly kind: 'pert';
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export const pert: Kind<Pert> = {
  check: mustBeInOrder,
  moments({ low, likely, high }) {
    // alpha + beta = 6, so the beta variance alpha beta / (36 * 7) times the squared width loses its
    // denominators.
    const left = high + 4 * likely - 5 * low,
      right = 5 * high - 4 * likely - low;
    return { mean: (low + 4 * likely + high) / 6, variance: (left * right) / 252 };
  },
  least: ({ low }) => low,
  scaled: (distribution, factor) => ({
    ...distribution,
    low: distribution.low * factor,
    likely: distribution.likely * factor,
    high: distribution.high * factor,
  }),
  filling({ low, likely, high }) {
    const width = high - low;
    if (width === 0) return always(low);
    const alpha = 1 + (4 * (likely - low)) / width,
      beta = 1 + (4 * (high - likely)) / width;
    return (out, from, to, state, at, scratch) => {
      fillBeta(out, from, to, state, at, alpha, beta, scratch);
      for (let k = from; k < to; k++) out[k] = low + width * out[k];
    };
  },
};

/** Values in [0, 1], as the share of one gamma in two. `scratch` is overwritten. */
function fillBeta(
  out: Float64Array,
  from: number,
  to: number,
  state: Int32Array,
  at: number,
  alpha: number,
  beta: number,
  scratch: Float64Array,
): void {
  const count = to - from;
  fillGamma(out, from, to, state, at, alpha, scratch);
  fillGamma(scratch, count, 2 * count, state, at, beta, scratch);
  for (let k = from; k < to; k++) {
    const first = out[k];
    out[k] = first / (first + scratch[count + k - from]);
  }
}
