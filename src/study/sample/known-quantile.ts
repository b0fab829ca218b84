import { number } from '../format.js';
import type { Counts } from '../statistics/counts.js';
import { leastForQuantile, quantileRanks } from '../statistics/quantile-interval.js';

/** A quantile over replications with its bounds; null where it is not known, `why` then says so. */
export interface KnownQuantile<Value> {
  readonly middle: Value | null;
  readonly low: Value | null;
  readonly high: Value | null;
  readonly why: string | null;
}

/**
 * A quantile with the order statistics that bound it; Infinity stands for longer, or later, than all known.
 * @param none says that there is no value
 * @param open says of how many replications no value is known
 */
export function knownQuantile<Value>(
  values: Counts,
  p: number,
  level: number,
  as: (value: number) => Value,
  none: string,
  open: (count: number) => string,
): KnownQuantile<Value> {
  const { n } = values,
    name = `P${number(p * 100)}`,
    ranks = quantileRanks(n, p, level),
    unknown = { middle: null, low: null, high: null };
  if (n === 0) return { ...unknown, why: none };
  if (ranks === null)
    return {
      ...unknown,
      why:
        `a ${number(level * 100)} % interval for ${name} needs ${leastForQuantile(p, level)} ` +
        `replications, there ${n === 1 ? 'is' : 'are'} ${n}`,
    };
  const known = (rank: number): Value | null => {
    const value = values.ranked(rank);
    return value === Infinity ? null : as(value);
  };
  const middle = known(ranks.middle),
    high = known(ranks.high),
    notYet = open(values.of(Infinity));
  if (middle === null) return { ...unknown, why: `${notYet}, and ${name} is among those` };
  return {
    middle,
    low: known(ranks.low),
    high,
    why: high === null ? `${notYet}, so the interval has no end` : null,
  };
}
