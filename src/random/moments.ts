import { type Distribution, kindOf } from './distribution.js';

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
