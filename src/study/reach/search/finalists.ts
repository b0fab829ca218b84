import { defined } from '../../lists.js';
import type { Replicator, Variant } from '../../run/replicator.js';
import type { Side } from '../../statistics/standard.js';
import type { Counts } from './choices.js';
import type { Setting } from './setting.js';

/** A set that was not short in the search, as fresh replications tell it. */
export interface Finalist {
  readonly counts: Counts;
  readonly replications: number;
  readonly side: Side;
}

/** Replications between two decisions. */
const STEP = 10;

/**
 * On which side of the goal a set is, with a chance of `error` at most that it is told wrongly, unless it is
 * within the zone of it (after a search the last few are decided by a procedure with a guarantee of its own:
 * Boesel, Nelson & Kim 2003, Operations Research 51(5), 814-825; from memory).
 * @param variants by criterion
 * @param most replications
 * @param replicator of replications that had no part in the search
 */
export async function decided(
  counts: Counts,
  variants: readonly Variant<number>[],
  setting: Setting,
  { most, error }: { readonly most: number; readonly error: number },
  replicator: Replicator,
): Promise<Finalist> {
  const runs = variants.map((variant, i) => ({
    variant,
    ...{ goal: defined(setting[i]).goal, values: [] as number[], side: null as Side },
  }));
  let done = 0;
  for (; done < most && sideOf(runs) === null; done = Math.min(done + STEP, most)) {
    const open = runs.filter(({ side }) => side === null),
      rows = await replicator.rows(
        open.map(({ variant }) => variant),
        done + 1,
        Math.min(done + STEP, most),
      );
    for (const [i, each] of open.entries()) {
      each.values.push(...defined(rows[i]));
      each.side = each.goal.decide(each.values, error / setting.length);
    }
  }
  return { counts, replications: done, side: sideOf(runs) };
}

/** Above by each criterion, or below by one. */
function sideOf(runs: readonly { readonly side: Side }[]): Side {
  if (runs.some(({ side }) => side === 'below')) return 'below';
  return runs.every(({ side }) => side === 'above') ? 'above' : null;
}
