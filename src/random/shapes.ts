/**
 * Distributions the way planners say them: a mean and a coefficient of variation (cv = standard deviation /
 * mean). The mean's unit is the caller's. A cv of 0 gives a constant.
 */

import { log, log1p } from './elementary.js';
import { mustBePositive, mustNotBeNegative, refuse } from './kinds/kind.js';
import type { Simple } from './kinds/simple.js';
import { weibullPowerOf, weibullUnitMean } from './kinds/weibull.js';

/**
 * Lognormal: sigma² = ln(1 + cv²), mu = ln(mean) - sigma²/2.
 * @throws RangeError unless mean > 0 and cv >= 0, both finite
 */
export function lognormalOf(mean: number, cv: number): Simple {
  checkMeanAndCv('lognormal', mean, cv);
  if (cv === 0) return { kind: 'constant', value: mean };
  const variance = log1p(cv * cv);
  return { kind: 'lognormal', mu: log(mean) - variance / 2, sigma: Math.sqrt(variance) };
}

/**
 * Gamma: shape = 1 / cv², scale = mean cv².
 * @throws RangeError unless mean > 0 and cv >= 0, both finite
 */
export function gammaOf(mean: number, cv: number): Simple {
  checkMeanAndCv('gamma', mean, cv);
  if (cv === 0) return { kind: 'constant', value: mean };
  return { kind: 'gamma', shape: 1 / (cv * cv), scale: mean * cv * cv };
}

/**
 * Weibull: its shape k solves cv² = Γ(1 + 2/k) / Γ(1 + 1/k)² - 1.
 * @throws RangeError unless mean > 0 and cv >= 0, both finite
 */
export function weibullOf(mean: number, cv: number): Simple {
  checkMeanAndCv('weibull', mean, cv);
  if (cv === 0) return { kind: 'constant', value: mean };
  const power = weibullPowerOf(cv);
  return { kind: 'weibull', shape: 1 / power, scale: mean / weibullUnitMean(power) };
}

/**
 * Erlang: the sum of `phases` equal exponential parts, so cv = 1 / √phases; a gamma with a whole shape.
 * @throws RangeError unless mean > 0 and finite, and phases is a whole number of at least 1
 */
export function erlangOf(mean: number, phases: number): Simple {
  mustBePositive('erlang mean', mean);
  if (!Number.isInteger(phases) || phases < 1)
    refuse('erlang phases', 'a whole number of at least 1 (gamma takes other spreads)', phases);
  return { kind: 'gamma', shape: phases, scale: mean / phases };
}

function checkMeanAndCv(kind: string, mean: number, cv: number): void {
  mustBePositive(`${kind} mean`, mean);
  mustNotBeNegative(`${kind} cv`, cv);
}
