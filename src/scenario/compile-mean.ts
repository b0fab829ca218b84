import type { Distribution } from '../random/distribution.js';

/** Mean of a distribution, in its own unit. */
export function meanOf(d: Distribution): number {
  switch (d.kind) {
    case 'constant': return d.value;
    case 'uniform': return (d.low + d.high) / 2;
    case 'triangular': return (d.low + d.likely + d.high) / 3;
    case 'pert': return (d.low + 4 * d.likely + d.high) / 6;
    case 'exponential': return d.mean;
    case 'gamma': return d.shape * d.scale;
    case 'lognormal': return Math.exp(d.mu + (d.sigma * d.sigma) / 2);
    case 'weibull': return d.scale * Math.exp(logGamma(1 + 1 / d.shape));
    case 'normal': return cutNormalMean(d.mean, d.sd, d.low, d.high);
    case 'discrete': return d.values.reduce((sum, value, i) => sum + value * d.weights[i], 0) / d.weights.reduce((sum, w) => sum + w, 0);
    case 'empirical': return d.values.reduce((sum, value) => sum + value, 0) / d.values.length;
  }
}

/** ln of the gamma function, x > 0: Stirling's series (Abramowitz & Stegun 1964, 6.1.41) after moving x up to 10. */
function logGamma(x: number): number {
  let product = 1, z = x;
  while (z < 10) product *= z++;
  const w = 1 / (z * z);
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w / 1680))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}

/** Half width of the range of a normal that matters to a mean, in sd. */
const REACH = 12;
const INTERVALS = 2000;

/** Mean of a normal cut to [low, high], by Simpson's rule over its density: safe where the interval lies far out in a tail. */
function cutNormalMean(mean: number, sd: number, low: number, high: number): number {
  if (sd === 0 || low === high) return Math.min(Math.max(mean, low), high);
  const peak = Math.min(Math.max(mean, low), high);
  const from = Math.max(low, peak - REACH * sd), to = Math.min(high, peak + REACH * sd);
  const step = (to - from) / INTERVALS, atPeak = (peak - mean) / sd;
  let mass = 0, moment = 0;
  for (let i = 0; i <= INTERVALS; i++) {
    const x = from + i * step, z = (x - mean) / sd;
    const weight = i === 0 || i === INTERVALS ? 1 : i % 2 === 1 ? 4 : 2;
    const density = weight * Math.exp((atPeak * atPeak - z * z) / 2);
    mass += density;
    moment += density * (x - peak);
  }
  return peak + moment / mass;
}
