import { defined } from '../lists.js';
import { BestSelection } from '../statistics/select-best.js';
import type { Tried } from './search/tried.js';
import type { Layout } from './spots.js';

/** First rounds of the procedure, and how many are run at a time after them. */
const ROUNDS_AT_ONCE = 10;
/** Rounds after which the best so far is taken, and said not to be settled. */
export const MOST_ROUNDS = 500;

export interface Selected {
  readonly layout: Layout;
  /** What it was selected among, without it. */
  readonly others: readonly Layout[];
  readonly settled: boolean;
  readonly rounds: number;
}

/**
 * The best of a few layouts by Kim & Nelson (2001), see `BestSelection`, on replications that the search has
 * not seen: it would otherwise favour those that were lucky in it.
 * @param zone difference that does not matter, in the unit of the rate
 */
export async function selectBest(
  fresh: Tried,
  layouts: readonly Layout[],
  zone: number,
  level: number,
): Promise<Selected> {
  const selection = new BestSelection(layouts.length, ROUNDS_AT_ONCE, Math.max(zone, Number.EPSILON), level);
  const alive = (): Layout[] => selection.alive.map((i) => defined(layouts[i]));
  while (!selection.isOver && selection.round < MOST_ROUNDS) {
    const end = selection.round + ROUNDS_AT_ONCE;
    await fresh.run(alive(), end);
    for (let round = selection.round; round < end && selection.alive.length > 1; round++)
      selection.add(alive().map((layout) => defined(fresh.values(layout)[round])));
  }
  const best = defined(layouts[selection.best]);
  return {
    layout: best,
    others: layouts.filter((layout) => layout !== best),
    settled: selection.isOver,
    rounds: selection.round,
  };
}
