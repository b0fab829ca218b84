import { type Constant, constant } from './kinds/constant.js';
import { type Discrete, discrete, type Empirical, empirical } from './kinds/discrete.js';
import { type Exponential, exponential } from './kinds/exponential.js';
import { type Gamma, gamma } from './kinds/gamma.js';
import type { Kind } from './kinds/kind.js';
import { type Lognormal, lognormal } from './kinds/lognormal.js';
import { type Normal, normal } from './kinds/normal.js';
import { type Pert, pert, type Triangular, triangular } from './kinds/three-points.js';
import { type Uniform, uniform } from './kinds/uniform.js';
import { type Weibull, weibull } from './kinds/weibull.js';

/**
 * What a random quantity is, as plain data. Units are the caller's (the engine uses minutes). What is known
 * of its kind, and how its values are drawn, stands in the file of the kind.
 */
export type Distribution =
  | Constant
  | Uniform
  | Triangular
  | Pert
  | Exponential
  | Gamma
  | Lognormal
  | Weibull
  | Normal
  | Discrete
  | Empirical;

const KINDS: { readonly [K in Distribution['kind']]: Kind<Extract<Distribution, { kind: K }>> } = {
  constant,
  uniform,
  triangular,
  pert,
  exponential,
  gamma,
  lognormal,
  weibull,
  normal,
  discrete,
  empirical,
};

/**
 * What is known of the kind of a distribution, which is checked.
 * @throws RangeError naming the kind, the parameter and its value when the distribution has no meaning
 */
export function kindOf(distribution: Distribution): Kind<Distribution> {
  const kind: Kind<Distribution> = KINDS[distribution.kind];
  kind.check(distribution);
  return kind;
}

/**
 * Exact moments of distributions, for capacity arithmetic and cross-checks; their formulas stand with the
 * kinds.
 */

/**
 * In the unit of the values.
 * @throws RangeError when the distribution has no meaning
 */
export const meanOf = (distribution: Distribution): number => kindOf(distribution).moments(distribution).mean;

/**
 * In the square of the unit of the values.
 * @throws RangeError when the distribution has no meaning
 */
export const varianceOf = (distribution: Distribution): number =>
  kindOf(distribution).moments(distribution).variance;

/**
 * The greatest number that no value can fall below.
 * @throws RangeError when the distribution has no meaning
 */
export const leastOf = (distribution: Distribution): number => kindOf(distribution).least(distribution);

/**
 * The distribution of `factor` (above 0) times the quantity: the form and the coefficient of variation stay.
 * @throws RangeError when the distribution has no meaning
 */
export const scaled = (distribution: Distribution, factor: number): Distribution =>
  kindOf(distribution).scaled(distribution, factor);
