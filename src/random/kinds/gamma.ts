import { exp, log } from '../elementary.js';
import { fillUniform, nextUniform } from '../streams.js';
import { fillNormal, nextNormal } from '../ziggurat.js';
import type { Kind } from './kind.js';
import { mustBePositive, scaling } from './kind.js';

export interface Gamma {
  readonly kind: 'gamma';
  readonly shape: number;
  readonly scale: number;
}

export const gamma: Kind<Gamma> = {
  check({ shape, scale }) {
    mustBePositive('gamma shape', shape);
    mustBePositive('gamma scale', scale);
  },
  moments: ({ shape, scale }) => ({ mean: shape * scale, variance: shape * scale * scale }),
  least: () => 0,
  scaled: scaling('scale'),
  filling:
    ({ shape, scale }) =>
    (out, from, to, state, at, scratch) => {
      fillGamma(out, from, to, state, at, shape, scratch);
      for (let k = from; k < to; k++) out[k] = scale * out[k];
    },
};

/**
 * Fills out[from] to out[to - 1] with gamma values of the given shape (> 0) and scale 1, after G. Marsaglia
 * and W. W. Tsang, "A simple method for generating gamma variables", ACM Transactions on Mathematical
 * Software 26(3), 2000; a shape below one by their power of a uniform (section 6). `scratch` must hold `to -
 * from` numbers and is overwritten.
 */
export function fillGamma(
  out: Float64Array,
  from: number,
  to: number,
  state: Int32Array,
  at: number,
  shape: number,
  scratch: Float64Array,
): void {
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  // First tries for the whole block come from the fast loops; the few that fail (at most 5 %) are drawn one
  // by one.
  fillNormal(out, from, to, state, at);
  fillUniform(scratch, 0, to - from, state, at);
  for (let k = from; k < to; k++) {
    const x = out[k];
    const root = 1 + c * x;
    const v = root * root * root;
    const xx = x * x;
    const u = scratch[k - from];
    if (v > 0 && (u < 1 - 0.0331 * xx * xx || isUnder(u, xx, v, d))) out[k] = d * v;
    else out[k] = nextGamma(state, at, d, c);
  }
  if (shape < 1) {
    const power = 1 / shape;
    fillUniform(scratch, 0, to - from, state, at);
    for (let k = from; k < to; k++) out[k] = out[k] * exp(power * log(scratch[k - from]));
  }
}

/** The full test behind the squeeze u < 1 - 0.0331 x⁴. */
function isUnder(u: number, xx: number, v: number, d: number): boolean {
  return log(u) < 0.5 * xx + d * (1 - v + log(v));
}

/** One gamma value of shape d + 1/3 >= 1. */
function nextGamma(state: Int32Array, at: number, d: number, c: number): number {
  for (;;) {
    const x = nextNormal(state, at);
    const root = 1 + c * x;
    const v = root * root * root;
    if (v > 0 && isUnder(nextUniform(state, at), x * x, v, d)) return d * v;
  }
}
