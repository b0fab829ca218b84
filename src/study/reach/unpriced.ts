import { cheapestNotShort } from './search/cheapest.js';
import type { Choices, Counts } from './search/choices.js';
import type { Pool } from './search/pool.js';

/** With some changes of no known price a cheaper set would do. */
export interface WithUnpriced {
  readonly counts: Counts;
  /** Those of it whose price is not given. */
  readonly names: readonly string[];
}

/**
 * The cheapest set that reaches the goal if what has no price cost nothing; null where it is no cheaper than
 * what was found without, or nothing is.
 * @param all of all changes
 * @param without what was found; null: nothing
 */
export async function withUnpriced(
  all: Choices,
  pool: Pool,
  without: Counts | null,
): Promise<WithUnpriced | null> {
  const sure = await cheapestThatReaches(all, pool);
  if (sure === null) return null;
  const names = all.all.flatMap(({ name, price }, i) =>
    price === undefined && (sure[i] ?? 0) > 0 ? [name] : [],
  );
  const isCheaper = without === null || all.price(sure) < all.price(without);
  return names.length > 0 && isCheaper ? { counts: sure, names } : null;
}

/** Sets that are close are passed over: what is told of prices that are not known is no more than a hint. */
async function cheapestThatReaches(all: Choices, pool: Pool): Promise<Counts | null> {
  const near: Counts[] = [];
  for (let tries = 0; tries < MOST_CLOSE; tries++) {
    const found = await cheapestNotShort(all, pool, near);
    if (found == null) return null;
    if (found.standing === 'reaches') return found.counts;
    near.push(found.counts);
  }
  return null;
}
const MOST_CLOSE = 4;
