import { fillUniform } from '../streams.js';
import { always } from './constant.js';
import { fillGamma } from './gamma.js';
import type { Kind } from './kind.js';
import { mustBeFinite, refuse, scaling } from './kind.js';

/** A likeliest value between two bounds. */
interface ThreePoints<Name extends string> {
  readonly kind: Name;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export type Triangular = ThreePoints<'triangular'>;

/** A beta on [low, high] (D. G. Malcolm et al. 1959). */
export type Pert = ThreePoints<'pert'>;

/** What the two have in common. */
const threePoints = {
  check({ kind, low, likely, high }: ThreePoints<string>): void {
    mustBeFinite(`${kind} low`, low);
    mustBeFinite(`${kind} likely`, likely);
    mustBeFinite(`${kind} high`, high);
    if (likely < low) refuse(`${kind} likely`, `at least low (${low})`, likely);
    if (likely > high) refuse(`${kind} likely`, `at most high (${high})`, likely);
  },
  least: ({ low }: ThreePoints<string>): number => low,
  scaled: scaling('low', 'likely', 'high'),
};

export const triangular: Kind<Triangular> = {
  ...threePoints,
  moments({ low, likely, high }) {
    const left = likely - low,
      right = high - likely;
    return {
      mean: (low + likely + high) / 3,
      variance: (left * left + left * right + right * right) / 18,
    };
  },
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

export const pert: Kind<Pert> = {
  ...threePoints,
  moments({ low, likely, high }) {
    // alpha + beta = 6, so the beta variance alpha beta / (36 * 7) times the squared width loses its
    // denominators.
    const left = high + 4 * likely - 5 * low,
      right = 5 * high - 4 * likely - low;
    return { mean: (low + 4 * likely + high) / 6, variance: (left * right) / 252 };
  },
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
