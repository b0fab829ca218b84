import { exp, log } from '../../../random/elementary.js';
import { incompleteBeta } from './incomplete-beta.js';
import { incompleteGamma } from './incomplete-gamma.js';

/** Ln of the square root of 2 pi. */
export const LOG_ROOT_2PI = log(2 * Math.PI) / 2;

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => exp(-z * z * 0.5 - LOG_ROOT_2PI);

/** Chance of a standard normal value above z; keeps its digits in the far tail. */
export const normalAbove = (z: number): number =>
  z > 0 ? incompleteGamma(0.5, z * z * 0.5, true) / 2 : (1 + incompleteGamma(0.5, z * z * 0.5)) / 2;

/** Cumulative curve of the standard normal distribution. */
export const normalBelow = (z: number): number => normalAbove(-z);

/** Chance of a chi-square value above `x`. */
export const chiSquareAbove = (x: number, freedom: number): number =>
  incompleteGamma(freedom / 2, x / 2, true);

/** Chance of a value of Student's t further from 0 than `t`, on either side (Abramowitz & Stegun, 26.7.1). */
export const studentBeyond = (t: number, freedom: number): number =>
  incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5);

/**
 * Density over the chance of being above, at z (the hazard, or inverse Mills ratio), for all z: far out,
 * where both are 0, by z + 1 / z - 2 / z^3 (Abramowitz & Stegun, 26.2.12).
 */
export const normalHazard = (z: number): number =>
  z < 35 ? normalDensity(z) / normalAbove(z) : z + 1 / z - 2 / (z * z * z);
