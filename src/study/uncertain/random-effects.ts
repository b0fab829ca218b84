import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { mean } from '../statistics/sums.js';

/** A share of a variance with its interval. */
export interface VarianceShare {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** What differs between groups (draws of the inputs), and within them (chance). */
export interface RandomEffects {
  /** Groups. */
  readonly groups: number;
  readonly mean: number;
  /** Mean squares between groups (groups - 1 degrees of freedom) and within (groups (size - 1)). */
  readonly between: number;
  readonly within: number;
  /** Variances of one value: what the groups have of it, at least 0, and what is within. */
  readonly ofGroups: number;
  readonly ofValues: number;
  /** Half the width of the interval of the mean that covers both; null of fewer than two groups. */
  readonly half: number | null;
  /** The same of the mean of these very groups: chance alone. */
  readonly halfWithin: number | null;
  /** What the groups have of the variance of one value, and of that behind the interval; null: no spread. */
  readonly shareOfValue: VarianceShare | null;
  readonly shareOfInterval: VarianceShare | null;
}

/**
 * One-way analysis of variance with random effects, of groups of the same size m (Scheffe 1959, The Analysis
 * of Variance, ch. 7; Searle, Casella & McCulloch 1992, Variance Components, sec. 3.6; from memory). With the
 * mean squares B between and W within, the variance of the groups is (B - W) / m, or 0 if that is below it,
 * that within is W. With theta their ratio, (B / W) / (1 + m theta) is F with d - 1 and d (m - 1) degrees of
 * freedom, which gives theta an interval, and every share that rises with it.
 *
 * The mean over d groups has the variance B / (m d); what is asked is not the mean of the groups but the
 * value at the group that is true, which is one more of them (Zouaoui & Wilson 2003, IIE Transactions 35(9),
 * 781-792; Ankenman & Nelson 2012, Proc. Winter Simulation Conference, 241-252; both from memory). One more
 * mean of a group lies within t(d - 1) sqrt(B / m (1 + 1 / d)), chance within it included. Where the groups
 * surely differ that chance is left out, V = (B - W) / m + B / (m d), with Satterthwaite's degrees of freedom
 * (1946, Biometrics Bulletin 2, 110-114; from memory), two at least, if that is narrower; where they do not,
 * the difference of B and W is known too badly for that. The interval does not shrink to nothing with more
 * groups.
 * @param groups two or more values each, all of the same number
 * @param level confidence, above 0 and below 1
 */
export function randomEffects(groups: readonly (readonly number[])[], level: number): RandomEffects {
  const d = groups.length,
    m = groups[0]?.length ?? 0;
  if (d > 0 && (m < 2 || groups.some(({ length }) => length !== m)))
    throw new RangeError('random effects: expected groups of the same size, two values or more in each');
  const means = groups.map(mean),
    middle = d === 0 ? 0 : mean(means),
    between = d < 2 ? 0 : (m * squares(means, middle)) / (d - 1),
    within =
      d === 0 ? 0 : groups.reduce((sum, group) => sum + squares(group, mean(group)), 0) / (d * (m - 1)),
    ofGroups = d < 2 ? 0 : Math.max(0, (between - within) / m);
  const found = { groups: d, mean: middle, between, within, ofGroups, ofValues: within };
  if (d < 2) return { ...found, half: null, halfWithin: null, shareOfValue: null, shareOfInterval: null };
  const t = tQuantile((1 + level) / 2, d - 1),
    tail = (1 - level) / 2,
    ratio = between / within,
    ofOneMore = t * Math.sqrt((between / m) * (1 + 1 / d)),
    theta = (p: number): number => Math.max(0, (ratio / fQuantile(p, d - 1, d * (m - 1)) - 1) / m),
    ends = { low: theta(1 - tail), high: theta(tail) };
  const share = (of: (theta: number) => number): VarianceShare | null =>
    between === 0 && within === 0
      ? null
      : within === 0
        ? { share: of(Infinity), low: of(Infinity), high: of(Infinity) }
        : { share: of(Math.max(0, (ratio - 1) / m)), low: of(ends.low), high: of(ends.high) };
  return {
    ...found,
    half: ends.low > 0 ? Math.min(ofOneMore, apart(found, m, level)) : ofOneMore,
    halfWithin: tQuantile((1 + level) / 2, d * (m - 1)) * Math.sqrt(within / (m * d)),
    shareOfValue: share((at) => (at === Infinity ? 1 : at / (1 + at))),
    // Of theta + (theta + 1 / m) / d, in units of the variance within.
    shareOfInterval: share((at) => (at === Infinity ? d / (d + 1) : at / (at + (at + 1 / m) / d))),
  };
}

/** Half the width with chance within groups left out, see above; groups differ. */
function apart(
  { groups: d, between, within }: Pick<RandomEffects, 'groups' | 'between' | 'within'>,
  m: number,
  level: number,
): number {
  const ofBetween = (between / m) * (1 + 1 / d),
    ofWithin = within / m,
    variance = ofBetween - ofWithin,
    freedom =
      (variance * variance) / ((ofBetween * ofBetween) / (d - 1) + (ofWithin * ofWithin) / (d * (m - 1)));
  return tQuantile((1 + level) / 2, Math.min(d - 1, Math.max(2, freedom))) * Math.sqrt(variance);
}

/** Quantile of F by that of the Beta: x = a F / (a F + b) is Beta(a / 2, b / 2). */
export function fQuantile(p: number, a: number, b: number): number {
  const x = betaQuantile(p, a / 2, b / 2);
  return (b * x) / (a * (1 - x));
}

const squares = (values: readonly number[], about: number): number =>
  values.reduce((sum, value) => sum + (value - about) * (value - about), 0);
