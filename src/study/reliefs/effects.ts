import { difference } from '../statistics/difference.js';
import { type Estimate, meanInterval } from '../statistics/interval.js';
import type { Out } from './screen.js';
import type { Compared } from './runs.js';
import type { Effect } from './results.js';

/** A change against the base, by pairs of replications with the same streams. */
export function effectOf(
  base: readonly Compared[],
  row: readonly Compared[],
  out: Out | null,
  level: number,
): Effect {
  const first = base.slice(0, row.length),
    of = (what: keyof Compared) =>
      difference(
        first.map((each) => each[what]),
        row.map((each) => each[what]),
        level,
      );
  const { difference: gain, pairingGain } = of('throughput'),
    cost = of('cost').difference;
  return { gain, pairingGain, costPerUnit: cost.n === 0 ? null : cost, replications: row.length, out };
}

/**
 * Ratio of the mean gain to the mean change of cost, with the classical interval of a ratio: the Student
 * interval of the mean of (gain - ratio cost) / mean cost about it (Law 2015, sec. 9.5.3, the same as for
 * regenerative cycles; from memory). null unless the unit surely gets dearer, as otherwise a quotient tells
 * nothing.
 */
export function gainPerCost(
  base: readonly Compared[],
  row: readonly Compared[],
  { gain, costPerUnit: cost }: Effect,
): Estimate | null {
  if (cost === null || cost.low === null || cost.low <= 0) return null;
  const quotient = gain.mean / cost.mean,
    pulls = row.map(
      (each, r) =>
        (each.throughput - base[r]!.throughput - quotient * (each.cost - base[r]!.cost)) / cost.mean,
    );
  const { low, high, n } = meanInterval(pulls, gain.level);
  return {
    mean: quotient,
    low: low === null ? null : quotient + low,
    high: high === null ? null : quotient + high,
    level: gain.level,
    n,
  };
}
