import { defined } from '../lists.js';
import { rankedByPrice } from '../priced/per-gain.js';
import { difference } from '../statistics/difference.js';
import { type Estimate, mapped } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import type { Group } from './groups/in-groups.js';
import type { Effect, GroupResult, ReliefResult, VariedAssumption, VariedResult } from './results.js';
import { type Compared, gainsOver, surelyGains } from './runs.js';
import type { Out } from './screen.js';
import type { ValueEnd } from './values/values.js';

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
    cost = of('cost').difference,
    last = of('lastUnit').difference;
  return {
    gain,
    pairingGain,
    costPerUnit: cost.n === 0 ? null : cost,
    lastUnitDays: last.n === 0 ? null : last,
    replications: row.length,
    out,
  };
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
    costs = gainsOver(base, row, 'cost'),
    pulls = gainsOver(base, row, 'throughput').map(
      (more, r) => (more - quotient * defined(costs[r])) / cost.mean,
    );
  return { ...mapped(meanInterval(pulls, gain.level), (pull) => quotient + pull), mean: quotient };
}

/** What groups gain, by pairs of replications, the one that gains most first. */
export const groupsOf = (base: readonly Compared[], groups: readonly Group[], level: number): GroupResult[] =>
  groups
    .map(({ members, row }) => ({
      gain: effectOf(base, row, null, level).gain,
      replications: row.length,
      reliefs: members.map(({ of: { kind, text, of, offer } }) => ({
        ...{ kind, text, of },
        ...(offer !== undefined && { offer }),
      })),
    }))
    .sort((a, b) => b.gain.mean - a.gain.mean);

/** With their ranks: as they come, by cost, and by price. */
export function ranks(all: readonly ReliefResult[]): ReliefResult[] {
  const isDearer = (each: ReliefResult): number => Number((each.costPerUnit?.mean ?? 0) > 0);
  const worth = all
    .filter(
      ({ gain, costPerUnit: cost, gainPerCost: quotient }) =>
        cost !== null && surelyGains(gain) && (cost.mean <= 0 || quotient !== null),
    )
    .sort(
      (a, b) =>
        isDearer(a) - isDearer(b) ||
        (b.gainPerCost?.mean ?? b.gain.mean) - (a.gainPerCost?.mean ?? a.gain.mean),
    );
  return rankedByPrice(
    all.map((each, i) => ({
      ...each,
      rank: i + 1,
      rankPerCost: worth.includes(each) ? worth.indexOf(each) + 1 : null,
    })),
  );
}

/** An end of an assumption, as it was run. */
export interface AssumedEnd extends ValueEnd {
  readonly effect: Effect;
}

/** Assumptions by the greater effect of their two ends. */
export function tornado(ends: readonly AssumedEnd[]): VariedAssumption[] {
  return [...new Set(ends.map(({ varied }) => varied))]
    .map((varied): VariedAssumption => {
      const { path, words, basis, note, value } = varied.assumption;
      const of = (side: 'low' | 'high'): VariedResult | null => {
        const end = ends.find((each) => each.varied === varied && each.side === side);
        return end === undefined ? null : { value: defined(varied[side]).value, ...end.effect };
      };
      const low = of('low'),
        high = of('high');
      return {
        path,
        words,
        basis,
        note: note ?? null,
        value,
        low,
        high,
        largest: Math.max(0, ...[low, high].map((each) => Math.abs(each?.gain.mean ?? 0))),
      };
    })
    .sort((a, b) => b.largest - a.largest);
}
