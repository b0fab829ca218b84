import { type Distribution, meanOf, varianceOf } from '../../random/distribution.js';
import { exp, log } from '../../random/elementary.js';
import { Draws } from './goodness/draws.js';
import { familyOf } from './kinds/families.js';
import { sampleOf } from './kinds/sample.js';

interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** How well a sample tells the mean (minutes) and the coefficient of variation of what was fitted to it. */
export interface Known {
  readonly mean: Interval;
  readonly cv: Interval;
  readonly level: number;
}

/**
 * Intervals of mean and cv by parametric bootstrap: samples as large are drawn from the fitted distribution
 * and fitted again; by as much as ln of their mean and cv fall to one side of the fitted, the true ones are
 * taken to lie on the other (the basic interval of A. C. Davison & D. V. Hinkley, Bootstrap Methods and their
 * Application, 1997, section 5.2, on the logarithm; from memory). For the cv of lognormals it is exact, but
 * for the simulation.
 * @param n of the sample
 * @returns undefined of kinds that are not fitted
 */
export function knownOf(
  distribution: Distribution,
  n: number,
  { simulated = 399, level = 0.95, stream = 'fit/intervals' } = {},
): Known | undefined {
  const family = familyOf(distribution);
  if (family === undefined) return undefined;
  const draws = new Draws(distribution, n, stream),
    means: number[] = [],
    cvs: number[] = [];
  for (let k = 0; k < simulated; k++) {
    const again = family.fit(sampleOf(draws.next()));
    if (again === undefined) continue;
    means.push(log(meanOf(again)));
    cvs.push(log(cvOf(again)));
  }
  return {
    mean: basic(meanOf(distribution), means, level),
    cv: basic(cvOf(distribution), cvs, level),
    level,
  };
}

const cvOf = (distribution: Distribution): number =>
  Math.sqrt(varianceOf(distribution)) / meanOf(distribution);

function basic(value: number, logs: readonly number[], level: number): Interval {
  const sorted = logs.toSorted((a, b) => a - b),
    // The (r + 1) p-th of r values (Davison & Hinkley, section 2.2).
    at = (p: number): number =>
      sorted[Math.min(sorted.length, Math.max(1, Math.round((sorted.length + 1) * p))) - 1] ?? NaN,
    other = (p: number): number => exp(2 * log(value) - at(p));
  return { value, low: other((1 + level) / 2), high: other((1 - level) / 2) };
}
