import type { Model } from '../model/model.js';

/**
 * What is left of the work time of a step when it is done for the n-th time, as a part of the first time's (n
 * from 1). Crawford 1944 (unit form): n^b with b = log2(rate). Wright 1936 (cumulative mean): the mean of the
 * first n is n^b, so the n-th takes n^(b + 1) - (n - 1)^(b + 1). Neither falls below the floor.
 */
export function learningFactor(
  { learnExponent, learnCumulative, learnFloor }: Model['steps'],
  step: number,
  n: number,
): number {
  const b = learnExponent[step],
    factor = learnCumulative[step] === 1 ? n ** (b + 1) - (n - 1) ** (b + 1) : n ** b;
  return Math.max(learnFloor[step], factor);
}
