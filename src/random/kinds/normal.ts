import { exp, expm1, log1p } from '../elementary.js';
import { nextUniform } from '../streams.js';
import { nextNormal } from '../ziggurat.js';
import { always } from './constant.js';
import type { Kind } from './kind.js';
import { type Moments, mustBeFinite, mustNotBeNegative, refuse, scaling } from './kind.js';

/** A normal cut to [low, high]; `mean` and `sd` are those before the cut. */
export interface Normal {
  readonly kind: 'normal';
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
}

export const normal: Kind<Normal> = {
  check({ mean, sd, low, high }) {
    mustBeFinite('normal mean', mean);
    mustNotBeNegative('normal sd', sd);
    if (Number.isNaN(low) || low === Infinity) refuse('normal low', 'a number or -Infinity', low);
    if (Number.isNaN(high) || high === -Infinity) refuse('normal high', 'a number or Infinity', high);
    if (low > high) refuse('normal high', `at least low (${low})`, high);
  },
  moments: (distribution) =>
    hasNoSpread(distribution)
      ? { mean: nearest(distribution), variance: 0 }
      : cutNormalMoments(distribution.mean, distribution.sd, distribution.low, distribution.high),
  least: (distribution) => (distribution.sd === 0 ? nearest(distribution) : distribution.low),
  scaled: scaling('mean', 'sd', 'low', 'high'),
  filling(distribution) {
    if (hasNoSpread(distribution)) return always(nearest(distribution));
    const { mean, sd, low, high } = distribution;
    return (out, from, to, state, at) => {
      fillCutNormal(out, from, to, state, at, mean, sd, low, high);
    };
  },
};

const hasNoSpread = ({ sd, low, high }: Normal): boolean => sd === 0 || low === high;

/** The number in [low, high] that is nearest to the mean. */
const nearest = ({ mean, low, high }: Normal): number => Math.min(Math.max(mean, low), high);

/** Below this width (in sd) an interval about the mean is better served by a flat proposal (Robert 1995). */
const FLAT_WIDTH = Math.sqrt(2 * Math.PI);

/**
 * Fills out[from] to out[to - 1] with values of the normal (mean, sd before the cut) in [low, high]. Either
 * bound may be infinite; sd > 0 and low < high. After C. P. Robert, "Simulation of truncated normal
 * variables", Statistics and Computing 5, 1995: three proposals cover every interval, and each is accepted at
 * least 49 times in 100 on average, so no choice of bounds can make it loop for long.
 */
function fillCutNormal(
  out: Float64Array,
  from: number,
  to: number,
  state: Int32Array,
  at: number,
  mean: number,
  sd: number,
  low: number,
  high: number,
): void {
  const mirrored = high < mean;
  // The interval in sd, turned so that it lies about the mean or above it.
  const near = mirrored ? (mean - high) / sd : (low - mean) / sd;
  const width = (high - low) / sd;
  const edge = mirrored ? high : low;
  const sign = mirrored ? -sd : sd;
  for (let k = from; k < to; k++) {
    let value;
    if (near >= 0) value = edge + sign * nextBeyond(near, width, state, at);
    else if (width > FLAT_WIDTH) value = nextKept(mean, sd, low, high, state, at);
    else value = low + sd * nextAcross(near, width, state, at);
    // Rounding alone could leave the interval.
    out[k] = value < low ? low : value > high ? high : value;
  }
}

/** An interval that holds the mean and is wide keeps at least 49 % of the normals. */
function nextKept(
  mean: number,
  sd: number,
  low: number,
  high: number,
  state: Int32Array,
  at: number,
): number {
  let value;
  do value = mean + sd * nextNormal(state, at);
  while (value < low || value > high);
  return value;
}

/** Distance from the lower end of a narrow interval that holds the mean, in sd: flat proposal. */
function nextAcross(near: number, width: number, state: Int32Array, at: number): number {
  let t;
  do t = width * nextUniform(state, at);
  while (nextUniform(state, at) > exp(-0.5 * (near + t) * (near + t)));
  return t;
}

/** Distance from the nearer end of an interval that begins `near` >= 0 sd above the mean, in sd. */
function nextBeyond(near: number, width: number, state: Int32Array, at: number): number {
  // Best rate of an exponential proposal (Robert 1995); the density ratio peaks at t = 1 / rate.
  const rate = (near + Math.sqrt(near * near + 4)) / 2;
  const peak = 1 / rate;
  let t;
  if (width <= peak) {
    do t = width * nextUniform(state, at);
    while (nextUniform(state, at) > exp(-t * (near + 0.5 * t)));
    return t;
  }
  const reach = expm1(-rate * width);
  do t = -log1p(reach * nextUniform(state, at)) * peak;
  while (nextUniform(state, at) > exp(-0.5 * (t - peak) * (t - peak)));
  return t;
}

/** Even number of Simpson panels. */
const PANELS = 8192;
/** Beyond a density of exp(-45) of its greatest nothing is added that a double would keep. */
const NEGLIGIBLE = 45;

/**
 * Mean and variance of a normal cut to [low, high], by Simpson's rule on the density.
 *
 * The closed form (Johnson, Kotz & Balakrishnan 1994, section 10.1) loses all its digits in a narrow or
 * far-off interval, where it subtracts nearly equal numbers; this does not. Good to about nine digits
 * everywhere.
 *
 * `mean` and `sd` are those before the cut; sd > 0, low < high, either bound may be infinite.
 */
function cutNormalMoments(mean: number, sd: number, low: number, high: number): Moments {
  const mirrored = high < mean;
  const begin = mirrored ? (mean - high) / sd : (low - mean) / sd;
  const width = (high - low) / sd;
  // Distances t are measured from the likeliest point of the interval, where the weight is 1.
  const start = Math.max(begin, 0);
  const reach = Math.sqrt(start * start + 2 * NEGLIGIBLE) + start;
  const from = begin >= 0 ? 0 : Math.max(begin, -reach);
  const to = Math.min(begin >= 0 ? width : (high - mean) / sd, (2 * NEGLIGIBLE) / reach);
  const step = (to - from) / PANELS;
  let weight0 = 0;
  let weight1 = 0;
  let weight2 = 0;
  for (let k = 0; k <= PANELS; k++) {
    const along = k * step;
    const t = from + along;
    const simpson = k === 0 || k === PANELS ? 1 : k % 2 === 1 ? 4 : 2;
    const weight = simpson * exp(-t * (start + t / 2));
    weight0 += weight;
    weight1 += weight * along;
    weight2 += weight * along * along;
  }
  const along = weight1 / weight0;
  const distance = from + along;
  const likeliest = begin < 0 ? mean : mirrored ? high : low;
  return {
    mean: likeliest + (mirrored ? -sd : sd) * distance,
    variance: sd * sd * (weight2 / weight0 - along * along),
  };
}
