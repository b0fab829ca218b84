// Random numbers of the tight loop: sfc32 bits, ziggurat normals, lognormal work times by the block.

const LAYERS = 256;

/**
 * Ziggurat tables for exp(-x²/2): `edge[i]` is the right edge of layer i (edge[0] belongs to the base strip,
 * whose area includes the tail), `height[i]` the density at that edge, `inner[i]` the share of layer i that
 * lies wholly under the curve. Marsaglia & Tsang (2000), Journal of Statistical Software 5(8).
 */
function zigguratTables() {
  const density = (x) => Math.exp(-0.5 * x * x);
  const tailStart = 3.6541528853610088; // x of the base strip for 256 layers, as in the paper
  const layerArea = 0.00492867323399;
  const edge = new Float64Array(LAYERS + 1);
  edge[0] = layerArea / density(tailStart);
  edge[1] = tailStart;
  for (let i = 2; i < LAYERS; i++) {
    edge[i] = Math.sqrt(-2 * Math.log(layerArea / edge[i - 1] + density(edge[i - 1])));
  }
  const height = edge.map(density);
  const inner = new Float64Array(LAYERS);
  for (let i = 0; i < LAYERS; i++) inner[i] = edge[i + 1] / edge[i];
  return { edge, height, inner };
}

const { edge, height, inner } = zigguratTables();

/**
 * State of one sfc32 generator, four words spread from `seed` (a 32-bit integer) by multiply and xor-shift,
 * then run in so that near seeds lose their likeness.
 */
export function seedState(seed) {
  const state = new Int32Array(4);
  let counter = seed | 0;
  for (let i = 0; i < 4; i++) {
    counter = (counter + 0x9e3779b9) | 0;
    const mixed = Math.imul(counter ^ (counter >>> 15), 0x2c1b3c6d);
    state[i] = mixed ^ (mixed >>> 13);
  }
  for (let i = 0; i < 20; i++) uniform(state);
  return state;
}

/** One uniform in [0, 1) with 32 random bits. */
export function uniform(state) {
  const out = (((state[0] + state[1]) | 0) + state[3]) | 0;
  state[3] = (state[3] + 1) | 0;
  state[0] = state[1] ^ (state[1] >>> 9);
  state[1] = (state[2] + (state[2] << 3)) | 0;
  state[2] = (((state[2] << 21) | (state[2] >>> 11)) + out) | 0;
  return (out >>> 0) / 4294967296;
}

/** The one normal in about a hundred that falls outside a layer's inner part; NaN when it is refused. */
function edgeNormal(state, layer, signedShare) {
  if (layer === 0) {
    let beyond, check;
    do {
      beyond = -Math.log(1 - uniform(state)) / edge[1];
      check = -Math.log(1 - uniform(state));
    } while (2 * check < beyond * beyond);
    return signedShare < 0 ? -edge[1] - beyond : edge[1] + beyond;
  }
  const x = signedShare * edge[layer];
  const y = height[layer] + uniform(state) * (height[layer + 1] - height[layer]);
  return y < Math.exp(-0.5 * x * x) ? x : NaN;
}

/** Fill `out` with lognormal values exp(mu + sigma z); the generator's words stay in locals meanwhile. */
export function fillLognormal(out, state, mu, sigma) {
  let a = state[0],
    b = state[1],
    c = state[2],
    d = state[3];
  const n = out.length;
  for (let k = 0; k < n; ) {
    const bits = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + bits) | 0;
    // Low 8 bits choose the layer, the other 24 (with sign) the place in it: no bit serves twice.
    const layer = bits & 255;
    const signedShare = (bits >> 8) / 8388608;
    if (Math.abs(signedShare) < inner[layer]) {
      out[k++] = Math.exp(mu + sigma * (signedShare * edge[layer]));
      continue;
    }
    state[0] = a;
    state[1] = b;
    state[2] = c;
    state[3] = d;
    const z = edgeNormal(state, layer, signedShare);
    a = state[0];
    b = state[1];
    c = state[2];
    d = state[3];
    if (!Number.isNaN(z)) out[k++] = Math.exp(mu + sigma * z);
  }
  state[0] = a;
  state[1] = b;
  state[2] = c;
  state[3] = d;
}
