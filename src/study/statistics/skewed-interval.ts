import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { power } from '../../random/power.js';
import type { Estimate } from './estimate.js';
import { asAmount, momentsOf } from './interval.js';
import type { Moments } from './moments.js';
import { normalQuantile } from './proportion.js';

/**
 * Of what is rarely seen at least so many replications must tell something, or there is no interval; so many
 * are wanted where the number of replications that would do is told, since about half of the studies with as
 * many as would just do have too few again.
 */
const FEWEST_UNLIKE = 5,
  LIKELY_UNLIKE = 8;

/**
 * Hall's inverse is upright where skewness times -q is 1, and a single outlier could then make an interval
 * several times as wide; skewness counts up to this share of 1 / q.
 */
const MOST_SKEW = 0.9;

/** Values are written with ten digits: within a part in 1e9 they are the same but for rounding. */
const ROUNDING = 1e-9;

/**
 * Mean over replications of any measure, skewed or not, with its interval. Values that are not numbers are
 * left out.
 *
 * Student's t misses the mean of skewed values too often. With T = (mean - mu) / s, skewness g and n values,
 * sqrt(n) (T + g T^2 / 3 + g^2 T^3 / 27 + g / 6n) is symmetric to the order 1/n, and the cubic always has one
 * inverse, T(y) = 3 / g (cbrt(1 + g (y - g / 6n)) - 1) (Hall 1992, J. Roy. Stat. Soc. B 54(1), 221-228; from
 * memory). The interval runs from mean - s T(q) to mean - s T(-q), q = t / sqrt(n): Student's t in place of
 * Hall's normal, as n is small. A spread that hangs on a few of the values is known no better than from so
 * few: t has not n - 1 degrees of freedom, but fewer by as much as fewer values carry the mean than of n
 * normal ones. This is our own choice, by what was measured. Without skewness it is Student's interval, or a
 * hair wider.
 *
 * A mean that hangs on a few replications, the others all being 0 (or 1), has no interval: too few values
 * differ from the commonest, and `needs` says how many replications would do. Where all values are the same
 * there is no spread to make an interval of, be it that nothing can differ or that nothing was seen yet.
 * docs/measures.md shows by how much this was measured to hold.
 * @param level confidence, above 0 and below 1
 */
export function skewedInterval(moments: Moments, level: number): Estimate {
  const { n, mean, variance, skewness, carrying, unlike, range, magnitude } = moments,
    none = { mean, low: null, high: null, level, n };
  if (n < 2 || range <= ROUNDING * magnitude) return none;
  if (unlike < Math.min(FEWEST_UNLIKE, n - 1))
    return { ...none, needs: Math.ceil((LIKELY_UNLIKE * n) / unlike) };
  const s = Math.sqrt(variance),
    freedom = Math.min(n, Math.max(2, (n * carrying) / carryingOfNormal(n))) - 1,
    q = tQuantile((1 + level) / 2, freedom) / Math.sqrt(n),
    g = Math.max(-MOST_SKEW / q, Math.min(MOST_SKEW / q, skewness));
  const at = (y: number): number =>
    Math.abs(g) < ROUNDING ? y : (3 / g) * (cubeRoot(1 + g * (y - g / (6 * n))) - 1);
  return { mean, low: mean - s * at(q), high: mean - s * at(-q), level, n };
}

/**
 * How many of n normal values carry their mean, at the least and the greatest that are expected of them (Blom
 * 1958: the normal quantile at (n - 3/8) / (n + 1/4); from memory).
 */
function carryingOfNormal(n: number): number {
  const known = ofNormal.get(n);
  if (known !== undefined) return known;
  const one = normalQuantile((n - 0.375) / (n + 0.25)),
    square = one * one,
    carrying = (n * square) / (square + (n - 1) / n);
  ofNormal.set(n, carrying);
  return carrying;
}
const ofNormal = new Map<number, number>();

/** Mean over replications of what cannot be below 0. */
export const amount = (values: readonly number[], level: number): Estimate =>
  asAmount(skewedInterval(momentsOf(values), level));

/**
 * Mean number of events a replication. Of n replications without any it may still be up to -ln(1 - level) /
 * n, where events come by chance, singly: a Poisson count with that mean is 0 in all of them with the chance
 * 1 - level (Hanley & Lippman-Hand 1983, J. Am. Med. Assoc. 249(13), 1743-1745, "rule of three"; from
 * memory).
 */
export function eventsInterval(moments: Moments, level: number): Estimate {
  const { n, magnitude } = moments;
  return n > 0 && magnitude === 0
    ? { mean: 0, low: null, high: null, level, n, most: -Math.log(1 - level) / n }
    : asAmount(skewedInterval(moments, level));
}

/**
 * Of the greatest of several values so many replications are wanted: what makes it large is rarer than a few
 * replications show, and nothing in them tells. docs/measures.md has how often fewer held the longest
 * breakdown.
 */
const FEWEST_GREATEST = 200;

/** Mean over replications of the greatest of several values of each, which cannot be below 0. */
export function greatestInterval(moments: Moments, level: number): Estimate {
  const estimate = asAmount(skewedInterval(moments, level));
  return moments.n >= FEWEST_GREATEST || estimate.low === null
    ? estimate
    : { ...estimate, low: null, high: null, needs: FEWEST_GREATEST };
}

/**
 * What a buffer sees for less than so much of the time of one replication, in all of them together, is mostly
 * told by one replication in dozens, which may not be among them; twice as much probably does.
 */
const LEAST_TIME = 0.005;

/** A mean over time (a share, or units) is told only if there was enough of it to see; see above. */
export const unlessSeldom = (estimate: Estimate): Estimate =>
  estimate.low === null || estimate.n * estimate.mean >= LEAST_TIME
    ? estimate
    : { ...estimate, low: null, high: null, needs: Math.ceil((2 * LEAST_TIME) / estimate.mean) };

const cubeRoot = (x: number): number => Math.sign(x) * power(Math.abs(x), 1 / 3);
