import { defined } from '../../lists.js';
import { type Choices, type Counts, isWithin } from './choices.js';

/** Sets that are looked at: beyond that the search is given up, and no set is told. */
const MOST_LOOKED_AT = 200_000;

/**
 * The cheapest set that is part of none of those that are ruled out, and can be made; null: there is none. To
 * be part of none it must have something of what each of them lacks, so it is a cheapest hitting set, found
 * by branch and bound: of the set with the fewest ways out each is tried, and whatever gets as dear as the
 * best known is left.
 * @throws RangeError where it takes too long
 */
export function cheapestOutside(choices: Choices, ruledOut: readonly Counts[]): Counts | null {
  const seen = new Set<string>();
  let best: Counts | null = null;
  const waysOut = (counts: Counts, of: Counts): Counts[] =>
    choices.all.flatMap((_, i) => {
      const times = defined(of[i]) + 1;
      return times <= defined(choices.most[i]) ? [choices.with(counts, i, times)] : [];
    });
  const visit = (counts: Counts): void => {
    const key = counts.join();
    if (seen.has(key)) return;
    seen.add(key);
    if (seen.size > MOST_LOOKED_AT)
      throw new RangeError('costs.changes: expected fewer changes, got too many to search; leave some out');
    if (best !== null && choices.compare(counts, best) >= 0) return;
    if (!choices.mayGrow(counts)) return;
    const holding = ruledOut.filter((each) => isWithin(counts, each));
    if (holding.length === 0) {
      if (choices.isAllowed(counts)) best = counts;
      return;
    }
    const fewest = holding
      .map((each) => waysOut(counts, each))
      .reduce((least, ways) => (ways.length < least.length ? ways : least));
    for (const next of fewest.toSorted((a, b) => choices.compare(a, b))) visit(next);
  };
  visit(choices.none);
  return best;
}
