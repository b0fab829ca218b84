import { defined } from '../../lists.js';
import { boundsOf, type Estimate, mapped, negated } from '../../statistics/estimate.js';
import { meanInterval } from '../../statistics/interval.js';
import { mean } from '../../statistics/sums.js';

/** Of each case what a layout keeps of what another ships there, in shares by replication. */
export type Kept = readonly (readonly number[])[];

/**
 * The share that a layout ships of what another one does, by replication, so that their mean is the ratio of
 * the means and their spread that of the ratio, which is of as many replications (Cochran 1977, Sampling
 * Techniques, sec. 6.3: the ratio estimate; from memory). 1 where the other ships nothing.
 */
export function keptOf(rates: readonly number[], wholes: readonly number[]): number[] {
  const whole = mean(wholes),
    share = mean(rates) / whole;
  return whole > 0
    ? rates.map((rate, r) => share + (rate - share * defined(wholes[r])) / whole)
    : rates.map(() => 1);
}

/** Where a layout keeps least: by the means, which other cases may be that one, and how much it keeps. */
export interface Weakest {
  readonly at: number;
  readonly orElse: readonly number[];
  readonly kept: Estimate;
}

/**
 * The least of several means whose intervals hold together: it lies between the least of the lower bounds
 * and the least of the upper ones, and only in a case whose interval reaches below that.
 */
export function weakestOf(kept: readonly Estimate[]): Weakest {
  const bounds = kept.map(boundsOf),
    low = Math.min(...bounds.map((each) => each.low)),
    high = Math.min(...bounds.map((each) => each.high)),
    at = kept.reduce((least, each, c) => (each.mean < defined(kept[least]).mean ? c : least), 0);
  return {
    at,
    orElse: [...kept.keys()].filter((c) => c !== at && defined(bounds[c]).low <= high),
    kept: { ...defined(kept[at]), ...finite(low, high) },
  };
}

/** What one layout keeps in case c more than another in case b, `more[c][b]`, in pairs. */
export type MoreByCase = readonly (readonly Estimate[])[];

/**
 * What one layout keeps more in its weakest case than another in its own. The other keeps no more in its
 * weakest than in any case b, so the difference is at least the least of what the one keeps more than that in
 * those cases that may be its weakest; the best such b counts. Nor is it below the least of what it keeps
 * more in the same one of these. At most likewise, from the other side. Bounds that hold wherever all
 * intervals given do.
 */
export function worstMoreOf(one: Weakest, other: Weakest, more: MoreByCase): Estimate {
  const at = (c: number, b: number) => boundsOf(defined(more[c]?.[b])),
    [ones, others] = [one, other].map(({ at: c, orElse }) => [c, ...orElse]) as [number[], number[]],
    all = [...more.keys()];
  const low = Math.max(
      Math.min(...ones.map((c) => at(c, c).low)),
      ...all.map((b) => Math.min(...ones.map((c) => at(c, b).low))),
    ),
    high = Math.min(
      Math.max(...others.map((b) => at(b, b).high)),
      ...all.map((c) => Math.max(...others.map((b) => at(c, b).high))),
    );
  return {
    ...defined(more[one.at]?.[one.at]),
    mean: one.kept.mean - other.kept.mean,
    ...finite(low, high),
  };
}

/** The interval of the other by that of the one and of their difference, which holds where both do. */
export function lessBy(one: Estimate, more: Estimate): Estimate {
  const [its, by] = [boundsOf(one), boundsOf(more)];
  return { ...one, mean: one.mean - more.mean, ...finite(its.low - by.high, its.high - by.low) };
}

const finite = (low: number, high: number): Pick<Estimate, 'low' | 'high'> => ({
  low: Number.isFinite(low) ? low : null,
  high: Number.isFinite(high) ? high : null,
});

/** Loss of what is kept. */
export const lossOf = (kept: Estimate): Estimate => negated(mapped(kept, (share) => share - 1));

/** What the first is more than the second, paired. */
export const moreOf = (first: readonly number[], second: readonly number[], level: number): Estimate =>
  meanInterval(
    first.map((value, r) => value - defined(second[r])),
    level,
  );
