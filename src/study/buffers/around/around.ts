import type { Trials } from '../search/trials.js';
import { type CheapestAsked, cheapest } from './cheapest.js';
import { Paired } from './paired.js';
import { placeByPlace } from './place-by-place.js';
import type { Prices } from './prices.js';
import type { Around } from './results.js';

/** The study when its layout is chosen. */
export interface Chosen extends Omit<CheapestAsked, 'prices' | 'fresh'> {
  /** null: nothing has a price. */
  readonly prices: Prices | null;
  /** Replications that chose, in which nothing was left out. */
  readonly fresh: Trials;
  /** Empty, of the same replications; some may be left out. */
  readonly around: Trials;
  readonly onStage?: ((text: string) => void) | undefined;
}

export const NOTHING_AROUND: Around = { placeByPlace: null, cheapest: null };

/**
 * What each place of the chosen layout buys, spot by spot, and which layout is cheapest. Same study: same
 * results, to the last bit.
 */
export async function lookAround(study: Chosen): Promise<Around> {
  const { prices, fresh, around, chosen, best, present, onStage } = study,
    paired = new Paired(around, prices),
    // What is tried here is not of the search whose results are told.
    trials = study.trials.copy();
  for (const layout of [chosen, best ?? present, present])
    if (around.of(layout).length === 0) around.add(layout, fresh.of(layout).slice(0, around.most));
  onStage?.('looking at a place more and fewer, spot by spot');
  const places = await placeByPlace({ ...study, trials, fresh: paired, isPriced: prices !== null });
  if (prices === null) return { placeByPlace: places, cheapest: null };
  onStage?.('looking for the cheapest layout');
  return { placeByPlace: places, cheapest: await cheapest({ ...study, trials, prices, fresh: paired }) };
}
