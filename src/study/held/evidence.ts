import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { momentsOf } from '../statistics/interval.js';

/**
 * One-sided confidence of what a build surely ships. Far above the usual: a rate called the highest that
 * holds is one of many looked at, and is not to lie above the limit of the build in one of a hundred studies.
 */
export const SURELY = 0.999;

/** What builds ship when more is asked of them than the rate in question, units in the weeks judged. */
export interface Shipped {
  /** Mean and standard error over replications; Infinity below two. */
  readonly mean: number;
  readonly error: number;
  readonly n: number;
  /** The mean is surely at least and at most that, by chance. */
  readonly low: number;
  readonly high: number;
  /**
   * Units by which counting whole units and loads may mislead beyond that. Where replications differ by more,
   * they even it out.
   */
  readonly slack: number;
}

/**
 * Mean with one-sided Student-t bounds, mean -+ t(n - 1) s / sqrt(n) (Student 1908).
 * @param units shipped in the weeks judged, by replication
 * @param whole units by which a count may be off though nothing is left to chance
 * @param surely confidence of each bound
 */
export function shippedIn(units: readonly number[], whole: number, surely = SURELY): Shipped {
  const { n, mean, variance } = momentsOf(units);
  if (n < 2) return { mean, error: Infinity, n, low: -Infinity, high: Infinity, slack: whole };
  const error = Math.sqrt(variance / n),
    half = tQuantile(surely, n - 1) * error;
  return {
    mean,
    error,
    n,
    low: mean - half,
    high: mean + half,
    slack: Math.max(0, whole - Math.sqrt(variance)),
  };
}

/** The same mean and spread as `most` replications would show them, if these are fewer. */
export function settledAt(shipped: Shipped, most: number): Shipped {
  const { n, mean, error } = shipped;
  if (n < 2 || n >= most) return shipped;
  const half = tQuantile(SURELY, most - 1) * error * Math.sqrt(n / most);
  return { ...shipped, low: mean - half, high: mean + half };
}

/**
 * Least and most that is surely shipped when more is asked than a rate, units a working day, each with a
 * confidence of 99.9 %; null where it is not known.
 */
export interface Shippable {
  readonly least: number | null;
  readonly most: number | null;
}

/** @param limits evidence by which the most is told: all, or that of the rate which ships most */
export function shippable(
  evidence: readonly Shipped[],
  workingDays: number,
  limits: readonly Shipped[] = evidence,
): Shippable {
  const most = (of: readonly number[]): number | null => {
    const best = Math.max(...of);
    return Number.isFinite(best) ? best / workingDays : null;
  };
  return { least: most(evidence.map(({ low }) => low)), most: most(limits.map(({ high }) => high)) };
}

/** To nine digits. @param ceiling units a working day that arithmetic allows; Infinity: no limit */
export const isWithinArithmetic = (perDay: number, ceiling: number): boolean =>
  perDay <= ceiling * (1 + 1e-9);

/** Whether a build can ship what a rate asks in the long run, or whether that is open. */
export type CanShip = 'yes' | 'no' | 'open';

/**
 * A rate can be kept up for ever only by a build that ships as much when more is asked of it: a line is
 * stable if what comes in is less than what it can ship, and not if it is more (Loynes 1962, Proc. Cambridge
 * Phil. Soc. 58, 497-520; from memory). At the rate itself that cannot be seen: the little that is missing is
 * lost in the coming and going of the units that wait. Up to what arithmetic allows, whole units and loads
 * are given in favour of the rate; beyond it, where arithmetic leaves something out, against it.
 * @param asked by the rate in question, units in the weeks judged
 * @param evidence at higher rates: any of them may show that as much can be shipped
 * @param isWithin what arithmetic allows
 * @param limits evidence that shows together that it cannot be
 */
export function canShip(
  asked: number,
  evidence: readonly Shipped[],
  isWithin: boolean,
  limits: readonly Shipped[] = evidence,
): CanShip {
  const sign = isWithin ? 1 : -1;
  if (evidence.some(({ low, slack }) => low + sign * slack >= asked - ROUNDING)) return 'yes';
  return limits.length > 0 && limits.every(({ high, slack }) => high + sign * slack < asked) ? 'no' : 'open';
}
const ROUNDING = 1e-6;

/**
 * Replications after which a mean as it is now would show that a build can ship what is asked, if its spread
 * stays; Infinity if it never would.
 * @param hope standard errors by which the mean may turn out to be higher
 */
export function replicationsToShow(
  asked: number,
  { mean, error, n, slack }: Shipped,
  isWithin: boolean,
  hope = 0,
): number {
  if (error === Infinity) return Infinity;
  const over = mean + hope * error + (isWithin ? slack : -slack) - asked;
  if (!(over > 0)) return Infinity;
  const times = (tQuantile(SURELY, n - 1) * error) / over;
  return Math.ceil(n * times * times);
}
