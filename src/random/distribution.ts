import type { Kind } from './kinds/kind.js';
import { type Mixture, mixture } from './kinds/mixture.js';
import { SIMPLE, type Simple } from './kinds/simple.js';

/**
 * What a random quantity is, as plain data. Units are the caller's (the engine uses minutes). What is known
 * of its kind, and how its values are drawn, stands in the file of the kind.
 */
export type Distribution = Simple | Mixture;

/**
 * What is known of the kind of a distribution, which is checked.
 * @throws RangeError naming the kind, the parameter and its value when the distribution has no meaning
 */
export function kindOf(distribution: Distribution): Kind<Distribution> {
  const kind: Kind<Distribution> = distribution.kind === 'mixture' ? mixture : SIMPLE[distribution.kind];
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
