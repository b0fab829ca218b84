import { difference } from '../statistics/difference.js';
import { boundsOf } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import type { FactorsResults } from './results.js';

type Found = Pick<FactorsResults['best'], 'combination' | 'notBehind'>;

/**
 * The combination with the greatest mean, and those that do not surely have less. Each other one is set
 * against it in pairs. To be wrong with "surely the best" its interval against the true best would have to
 * miss, and there are fewer of those than combinations: Bonferroni's inequality over them, whichever comes
 * out first (compare Hsu 1984, Annals of Statistics 12, 1136-1144, multiple comparisons with the best; from
 * memory).
 * @param values by combination, then by replication
 */
export function bestOf(values: readonly (readonly number[])[], level: number): Found {
  const means = values.map((each) => meanInterval(each, level).mean),
    combination = means.indexOf(Math.max(...means)),
    most = values[combination] ?? [];
  return {
    combination,
    notBehind: values.flatMap((each, c) =>
      c === combination || boundsOf(difference(each, most, level).difference).low > 0 ? [] : [c],
    ),
  };
}

/** Of those that are not surely behind, the one with the fewest changes of the scenario as it is. */
export function nearestOf(
  { combination, notBehind }: Found,
  levels: readonly (readonly number[])[],
  asItIs: readonly number[] | undefined,
): number | null {
  if (asItIs === undefined) return null;
  const changes = (c: number): number => (levels[c] ?? []).filter((level, f) => level !== asItIs[f]).length;
  const [nearest] = [...notBehind].sort((a, b) => changes(a) - changes(b) || a - b);
  return nearest !== undefined && changes(nearest) < changes(combination) ? nearest : null;
}

/**
 * The combination that is told: of those that are not surely behind the one that ships most, the one with the
 * fewest changes, by number.
 */
export const toldCombination = ({ best }: Pick<FactorsResults, 'best'>): number =>
  best.nearest ?? best.combination;
