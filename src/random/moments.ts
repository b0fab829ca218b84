/**
 * Exact mean, variance and least value of each kind of distribution, for capacity arithmetic and
 * cross-checks. The mean and the least value have the unit of the values, the variance its square. Formulas:
 * Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, 1994-95, from memory; PERT: D. G.
 * Malcolm et al. 1959.
 */
import { checkDistribution } from './check.js';
import { cutNormalMoments, type Moments } from './kinds/normal.js';
import type { Distribution } from './distribution.js';
import { weibullLogSpread, weibullUnitMean } from './kinds/weibull.js';

/** @throws RangeError when the distribution has no meaning */
export function meanOf(distribution: Distribution): number {
  return momentsOf(distribution).mean;
}

/** @throws RangeError when the distribution has no meaning */
export function varianceOf(distribution: Distribution): number {
  return momentsOf(distribution).variance;
}

/**
 * The greatest number that no value can fall below.
 * @throws RangeError when the distribution has no meaning
 */
export function leastOf(d: Distribution): number {
  checkDistribution(d);
  switch (d.kind) {
    case 'constant':
      return d.value;
    case 'uniform':
    case 'triangular':
    case 'pert':
      return d.low;
    case 'exponential':
    case 'gamma':
    case 'weibull':
      return 0;
    case 'lognormal':
      return d.sigma === 0 ? Math.exp(d.mu) : 0;
    case 'normal':
      return d.sd === 0 ? momentsOf(d).mean : d.low;
    case 'discrete':
      return least(d.values.filter((_, k) => d.weights[k] > 0));
    case 'empirical':
      return least(d.values);
  }
}

function momentsOf(d: Distribution): Moments {
  checkDistribution(d);
  switch (d.kind) {
    case 'constant':
      return { mean: d.value, variance: 0 };
    case 'uniform':
      return { mean: (d.low + d.high) / 2, variance: (d.high - d.low) ** 2 / 12 };
    case 'triangular': {
      const left = d.likely - d.low;
      const right = d.high - d.likely;
      return {
        mean: (d.low + d.likely + d.high) / 3,
        variance: (left * left + left * right + right * right) / 18,
      };
    }
    case 'pert': {
      // alpha + beta = 6, so the beta variance alpha beta / (36 * 7) times the squared width loses its
      // denominators.
      const left = d.high + 4 * d.likely - 5 * d.low;
      const right = 5 * d.high - 4 * d.likely - d.low;
      return { mean: (d.low + 4 * d.likely + d.high) / 6, variance: (left * right) / 252 };
    }
    case 'exponential':
      return { mean: d.mean, variance: d.mean * d.mean };
    case 'gamma':
      return { mean: d.shape * d.scale, variance: d.shape * d.scale * d.scale };
    case 'lognormal': {
      const mean = Math.exp(d.mu + (d.sigma * d.sigma) / 2);
      return { mean, variance: mean * mean * Math.expm1(d.sigma * d.sigma) };
    }
    case 'weibull': {
      const mean = d.scale * weibullUnitMean(1 / d.shape);
      return { mean, variance: mean * mean * Math.expm1(weibullLogSpread(1 / d.shape)) };
    }
    case 'normal':
      if (d.sd === 0 || d.low === d.high)
        return { mean: Math.min(Math.max(d.mean, d.low), d.high), variance: 0 };
      return cutNormalMoments(d.mean, d.sd, d.low, d.high);
    case 'discrete':
      return weightedMoments(d.values, d.weights);
    case 'empirical':
      return weightedMoments(
        d.values,
        d.values.map(() => 1),
      );
  }
}

function weightedMoments(values: readonly number[], weights: readonly number[]): Moments {
  let total = 0;
  let sum = 0;
  values.forEach((value, k) => {
    total += weights[k];
    sum += weights[k] * value;
  });
  const mean = sum / total;
  let squares = 0;
  values.forEach((value, k) => (squares += weights[k] * (value - mean) ** 2));
  return { mean, variance: squares / total };
}

/** A loop, for observed values can be more than a call takes arguments. */
function least(values: readonly number[]): number {
  let smallest = Infinity;
  for (const value of values) if (value < smallest) smallest = value;
  return smallest;
}
