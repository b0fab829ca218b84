import { defined } from '../lists.js';
import { BestSelection } from '../statistics/select-best.js';
import type { Layout } from './spots.js';
import type { Trials } from './trials.js';

/** First rounds of the procedure, and how many are run at a time after them. */
const ROUNDS_AT_ONCE = 10;
/** Rounds after which the best so far is taken, and said not to be settled. */
const MOST_ROUNDS = 500;

export interface Selected {
  readonly layout: Layout;
  readonly settled: boolean;
  readonly rounds: number;
}

/**
 * The best of a few layouts by Kim & Nelson (2001), see `BestSelection`, on replications that the search has
 * not seen: it would otherwise favour those that were lucky in it.
 * @param zone difference that does not matter, in the unit of the rate
 */
export async function selectBest(
  fresh: Trials,
  layouts: readonly Layout[],
  zone: number,
  level: number,
): Promise<Selected> {
  const selection = new BestSelection(layouts.length, ROUNDS_AT_ONCE, Math.max(zone, Number.EPSILON), level);
  const all = layouts.map((layout) => ({ layout, values: () => fresh.values(layout) })),
    alive = () => selection.alive.map((i) => defined(all[i]));
  while (!selection.isOver && selection.round < MOST_ROUNDS) {
    const end = selection.round + ROUNDS_AT_ONCE;
    await fresh.run(
      alive().map(({ layout }) => layout),
      end,
    );
    for (let round = selection.round; round < end && selection.alive.length > 1; round++)
      selection.add(alive().map(({ values }) => defined(values()[round])));
  }
  return { layout: defined(all[selection.best]).layout, settled: selection.isOver, rounds: selection.round };
}
