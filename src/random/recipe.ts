import { checkDistribution } from './check.js';
import type { Distribution } from './distribution.js';

/**
 * Ways of drawing, as integers for one quick switch. Degenerate distributions (no spread) become CONSTANT.
 */
export const CONSTANT = 0;
export const UNIFORM = 1;
export const TRIANGULAR = 2;
export const PERT = 3;
export const EXPONENTIAL = 4;
export const GAMMA = 5;
export const LOGNORMAL = 6;
export const WEIBULL = 7;
export const CUT_NORMAL = 8;
export const DISCRETE = 9;
export const EMPIRICAL = 10;

/**
 * A distribution made ready for drawing: a way, up to four numbers whose meaning it fixes, and its tables.
 */
export interface Recipe {
  readonly way: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly values: Float64Array;
  /** Running sums of the shares of the values; the last is 1. Only for DISCRETE. */
  readonly upTo: Float64Array;
}

const NONE = new Float64Array(0);

const recipe = (way: number, a = 0, b = 0, c = 0, d = 0, values = NONE, upTo = NONE): Recipe => ({
  way,
  a,
  b,
  c,
  d,
  values,
  upTo,
});

/**
 * Checks a distribution and makes it ready.
 * @throws RangeError naming the kind, the parameter and its value when the distribution has no meaning
 */
export function recipeOf(d: Distribution): Recipe {
  checkDistribution(d);
  switch (d.kind) {
    case 'constant':
      return recipe(CONSTANT, d.value);
    case 'uniform':
      return d.low === d.high ? recipe(CONSTANT, d.low) : recipe(UNIFORM, d.low, d.high - d.low);
    case 'triangular':
      return d.low === d.high ? recipe(CONSTANT, d.low) : recipe(TRIANGULAR, d.low, d.likely, d.high);
    case 'pert': {
      const width = d.high - d.low;
      if (width === 0) return recipe(CONSTANT, d.low);
      return recipe(
        PERT,
        d.low,
        width,
        1 + (4 * (d.likely - d.low)) / width,
        1 + (4 * (d.high - d.likely)) / width,
      );
    }
    case 'exponential':
      return recipe(EXPONENTIAL, d.mean);
    case 'gamma':
      return recipe(GAMMA, d.shape, d.scale);
    case 'lognormal':
      return d.sigma === 0 ? recipe(CONSTANT, Math.exp(d.mu)) : recipe(LOGNORMAL, d.mu, d.sigma);
    case 'weibull':
      return recipe(WEIBULL, 1 / d.shape, d.scale);
    case 'normal':
      if (d.sd === 0 || d.low === d.high) return recipe(CONSTANT, Math.min(Math.max(d.mean, d.low), d.high));
      return recipe(CUT_NORMAL, d.mean, d.sd, d.low, d.high);
    case 'discrete':
      return discreteRecipe(d.values, d.weights);
    case 'empirical':
      return recipe(EMPIRICAL, 0, 0, 0, 0, Float64Array.from(d.values));
  }
}

function discreteRecipe(values: readonly number[], weights: readonly number[]): Recipe {
  // A value of no weight is left out, so that no rounding of the running sum can ever pick it.
  const kept = values.filter((_, k) => weights[k] > 0);
  const keptWeights = weights.filter((weight) => weight > 0);
  const total = keptWeights.reduce((sum, weight) => sum + weight, 0);
  let sum = 0;
  const upTo = Float64Array.from(keptWeights, (weight) => (sum += weight) / total);
  upTo[upTo.length - 1] = 1;
  return recipe(DISCRETE, 0, 0, 0, 0, Float64Array.from(kept), upTo);
}
