import { exp, log } from '../../../random/elementary.js';
import { LOG_ROOT_2PI } from '../../statistics/functions/normal.js';

/** Two normals, by share, mean and standard deviation: the lower mean first. */
export interface TwoNormals {
  readonly share: number;
  readonly means: readonly [number, number];
  readonly sds: readonly [number, number];
  readonly logLikelihood: number;
}

/**
 * No part is narrower than this share of the spread of all, since the likelihood would rise without end about
 * a single value (R. J. Hathaway, Annals of Statistics 13, 1985, 795-800; from memory).
 */
const NARROWEST = 0.15;
const MOST_STEPS = 100,
  /** A step that gains less log-likelihood than this is the last. */
  LEAST_GAIN = 1e-3;
/** Where the values are parted to begin with. */
const PARTED = [0.25, 0.5, 0.75];

/**
 * The mixture of two normals of greatest likelihood, by EM (A. P. Dempster, N. M. Laird & D. B. Rubin,
 * Journal of the Royal Statistical Society B 39, 1977, 1-38) from three starts.
 * @param values in rising order, four or more that differ
 */
export function twoNormals(values: Float64Array): TwoNormals {
  const sd = partOf(values, 0, values.length).sd,
    least = NARROWEST * sd;
  return PARTED.map((at) => climb(values, Math.round(at * values.length), least)).reduce((a, b) =>
    b.logLikelihood > a.logLikelihood ? b : a,
  );
}

function climb(values: Float64Array, at: number, least: number): TwoNormals {
  const n = values.length;
  let low = partOf(values, 0, at),
    high = partOf(values, at, n),
    share = at / n,
    before = -Infinity;
  for (let step = 0; ; step++) {
    const sdLow = Math.max(least, low.sd),
      sdHigh = Math.max(least, high.sd);
    const result: TwoNormals = {
      share,
      means: [low.mean, high.mean],
      sds: [sdLow, sdHigh],
      logLikelihood: 0,
    };
    const constantLow = log(share / sdLow) - LOG_ROOT_2PI,
      constantHigh = log((1 - share) / sdHigh) - LOG_ROOT_2PI;
    const sums = [0, 0, 0, 0, 0, 0];
    let total = 0;
    for (let i = 0; i < n; i++) {
      const x = values[i],
        a = (x - low.mean) / sdLow,
        b = (x - high.mean) / sdHigh,
        first = constantLow - 0.5 * a * a,
        second = constantHigh - 0.5 * b * b,
        most = Math.max(first, second),
        rest = 1 + exp(Math.min(first, second) - most),
        of = first >= second ? 1 / rest : 1 - 1 / rest;
      total += most + log(rest);
      sums[0] += of;
      sums[1] += of * x;
      sums[2] += of * x * x;
      sums[3] += 1 - of;
      sums[4] += (1 - of) * x;
      sums[5] += (1 - of) * x * x;
    }
    const isLast =
      !(total - before > LEAST_GAIN) || step >= MOST_STEPS || !(sums[0] > 1e-6 && sums[3] > 1e-6);
    if (isLast) return inOrder({ ...result, logLikelihood: total });
    before = total;
    share = sums[0] / n;
    low = fromSums(sums[0], sums[1], sums[2]);
    high = fromSums(sums[3], sums[4], sums[5]);
  }
}

const fromSums = (weight: number, first: number, second: number): { mean: number; sd: number } => {
  const mean = first / weight;
  return { mean, sd: Math.sqrt(Math.max(0, second / weight - mean * mean)) };
};

function partOf(values: Float64Array, from: number, to: number): { mean: number; sd: number } {
  let sum = 0,
    squares = 0;
  for (let i = from; i < to; i++) sum += values[i];
  const mean = sum / (to - from);
  for (let i = from; i < to; i++) squares += (values[i] - mean) * (values[i] - mean);
  return { mean, sd: Math.sqrt(squares / (to - from)) };
}

const inOrder = (two: TwoNormals): TwoNormals =>
  two.means[0] <= two.means[1]
    ? two
    : {
        ...two,
        share: 1 - two.share,
        means: [two.means[1], two.means[0]],
        sds: [two.sds[1], two.sds[0]],
      };
