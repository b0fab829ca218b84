import { type Distribution, kindOf, leastOf, meanOf, scaled, varianceOf } from './distribution.js';
import type { Simple } from './kinds/simple.js';
import { gammaOf, lognormalOf, weibullOf } from './shapes.js';

/** A time with another spread. */
export interface Spread {
  readonly distribution: Distribution;
  /**
   * Values would have fallen below 0: they are 0 instead, and all are made a little shorter so that the mean
   * stays; so the standard deviation is less than was asked.
   */
  readonly isCut: boolean;
}

/**
 * A time with `factor` times its standard deviation about the same mean. A gamma, lognormal or Weibull stays
 * one, with `factor` times its coefficient of variation, and an exponential becomes the gamma of which it is
 * one. All others are stretched about their mean, value by value: bounds, likeliest times, observed times,
 * and of a normal also its mean and standard deviation before the cut. Of a mixture each part's mean is
 * put so many times as far from the mean of all, and each part's spread about it is so many times as large.
 * A factor of 0 leaves the mean alone.
 * @param factor at least 0
 * @throws RangeError when the distribution has no meaning
 */
export function spreadBy(distribution: Distribution, factor: number): Spread {
  kindOf(distribution).check(distribution);
  if (distribution.kind === 'constant' || factor === 1) return { distribution, isCut: false };
  const mean = meanOf(distribution);
  if (factor === 0) return { distribution: { kind: 'constant', value: mean }, isCut: false };
  const ofMean = familyOf(distribution);
  if (ofMean !== undefined)
    return {
      distribution: ofMean(mean, factor * (Math.sqrt(varianceOf(distribution)) / mean)),
      isCut: false,
    };
  const away = (value: number): number => mean + factor * (value - mean),
    stretched = mapped(distribution, away, factor);
  if (leastOf(stretched) >= 0) return { distribution: stretched, isCut: false };
  const cut = mapped(stretched, (value, isBefore) => (isBefore ? value : Math.max(0, value)), 1);
  return { distribution: scaled(cut, mean / meanOf(cut)), isCut: true };
}

/** Kinds that are known by mean and coefficient of variation. */
function familyOf({ kind }: Distribution): ((mean: number, cv: number) => Simple) | undefined {
  switch (kind) {
    case 'exponential':
    case 'gamma':
      return gammaOf;
    case 'lognormal':
      return lognormalOf;
    case 'weibull':
      return weibullOf;
    default:
      return undefined;
  }
}

/**
 * All values of a distribution put elsewhere, `sd` times its own; `isBefore`: it is the mean before a cut,
 * and may lie anywhere.
 */
function mapped(
  distribution: Distribution,
  to: (value: number, isBefore?: boolean) => number,
  sd: number,
): Distribution {
  switch (distribution.kind) {
    case 'uniform':
      return { ...distribution, low: to(distribution.low), high: to(distribution.high) };
    case 'triangular':
    case 'pert': {
      const { low, likely, high } = distribution;
      return { ...distribution, low: to(low), likely: to(likely), high: to(high) };
    }
    case 'normal':
      return {
        ...distribution,
        mean: to(distribution.mean, true),
        sd: sd * distribution.sd,
        low: to(distribution.low),
        high: to(distribution.high),
      };
    case 'discrete':
    case 'empirical':
      return { ...distribution, values: distribution.values.map((value) => to(value)) };
    case 'mixture':
      return { ...distribution, parts: distribution.parts.map((part) => partMapped(part, to, sd)) };
    case 'constant':
      return { ...distribution, value: to(distribution.value) };
    case 'exponential':
    case 'gamma':
    case 'lognormal':
    case 'weibull':
      return distribution;
  }
}

/** A part of a mixture put elsewhere; one whose mean would be below 0 is fixed there, for the cut to find. */
function partMapped(part: Simple, to: (value: number) => number, sd: number): Simple {
  const ofMean = familyOf(part);
  if (ofMean === undefined) return mapped(part, to, sd) as Simple;
  const mean = to(meanOf(part));
  return mean > 0
    ? ofMean(mean, sd * (Math.sqrt(varianceOf(part)) / mean))
    : { kind: 'constant', value: mean };
}
