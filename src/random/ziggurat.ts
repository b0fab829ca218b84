/**
 * Standard normals by the ziggurat of G. Marsaglia and W. W. Tsang, "The ziggurat method for generating
 * random variables", Journal of Statistical Software 5(8), 2000: 128 layers of equal area under exp(-x²/2).
 *
 * The layer comes from a word of its own, not from the bits of the abscissa: J. A. Doornik (2005) showed that
 * sharing them leaves a correlation.
 */

import { exp, log } from './elementary.js';
import { nextUniform, nextWord } from './streams.js';

const LAYERS = 128;
/** Where the tail begins, and the area of each layer (Marsaglia & Tsang 2000, section 3). */
const TAIL = 3.442619855899;
const AREA = 9.91256303526217e-3;

/** Outer edge of each layer, from the base (0) to the top; EDGE[128] is 0. */
const EDGE = new Float64Array(LAYERS + 1);
/** Share of each layer's width that lies wholly under the curve. */
const SURE = new Float64Array(LAYERS);

const density = (x: number) => exp(-0.5 * x * x);
EDGE[0] = AREA / density(TAIL);
EDGE[1] = TAIL;
for (let i = 2; i < LAYERS; i++) {
  const inner = EDGE[i - 1];
  EDGE[i] = Math.sqrt(-2 * log(AREA / inner + density(inner)));
}
for (let i = 0; i < LAYERS; i++) SURE[i] = EDGE[i + 1] / EDGE[i];

/** Turns a signed word w into (w + 1/2) 2^-31, symmetric about 0 and inside (-1, 1). */
const TO_SIGNED = 2 ** -31;

/**
 * One standard normal. Takes two words, seldom more: 2.8 % of the points need a closer look.
 */
export function nextNormal(state: Int32Array, at: number): number {
  for (;;) {
    const layer = nextWord(state, at) & 127;
    const share = (nextWord(state, at) + 0.5) * TO_SIGNED;
    const z = Math.abs(share) < SURE[layer] ? share * EDGE[layer] : edgeCase(layer, share, state, at);
    if (z === z) return z;
  }
}

/**
 * Fills out[from] to out[to - 1] with standard normals. One word serves the layers of four values, so the
 * values are not those of `nextNormal`; they depend only on the state and on how many are asked for at once.
 */
export function fillNormal(out: Float64Array, from: number, to: number, state: Int32Array, at: number): void {
  // The state lives in locals in this loop: half the time of going through the array.
  let a = state[at];
  let b = state[at + 1];
  let c = state[at + 2];
  let d = state[at + 3];
  let layers = 0;
  let layersLeft = 0;
  let k = from;
  while (k < to) {
    let word;
    if (layersLeft === 0) {
      word = (((a + b) | 0) + d) | 0;
      d = (d + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + word) | 0;
      layers = word;
      layersLeft = 4;
    }
    word = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + word) | 0;
    const layer = layers & 127;
    const share = (word + 0.5) * TO_SIGNED;
    layers >>>= 8;
    layersLeft--;
    if (Math.abs(share) < SURE[layer]) {
      out[k++] = share * EDGE[layer];
    } else {
      state[at] = a;
      state[at + 1] = b;
      state[at + 2] = c;
      state[at + 3] = d;
      const z = edgeCase(layer, share, state, at);
      a = state[at];
      b = state[at + 1];
      c = state[at + 2];
      d = state[at + 3];
      if (z === z) out[k++] = z;
    }
  }
  state[at] = a;
  state[at + 1] = b;
  state[at + 2] = c;
  state[at + 3] = d;
}

/**
 * The value for a point that is not surely under the curve, or NaN when it lies above it and must be tried
 * again.
 */
function edgeCase(layer: number, share: number, state: Int32Array, at: number): number {
  if (layer === 0) return tail(share < 0, state, at);
  const outer = EDGE[layer];
  const inner = EDGE[layer + 1];
  const x = share * outer;
  const low = exp(-0.5 * (outer * outer - x * x));
  const high = exp(-0.5 * (inner * inner - x * x));
  return high + nextUniform(state, at) * (low - high) < 1 ? x : NaN;
}

/**
 * A value beyond TAIL: G. Marsaglia, "Generating a variable from the tail of the normal distribution", 1964.
 */
function tail(negative: boolean, state: Int32Array, at: number): number {
  let beyond;
  let y;
  do {
    beyond = -log(nextUniform(state, at)) / TAIL;
    y = -log(nextUniform(state, at));
  } while (y + y < beyond * beyond);
  return negative ? -TAIL - beyond : TAIL + beyond;
}
