import type { Estimate } from '../statistics/estimate.js';
import type { Offer } from './offer.js';
import { pricePerGain } from './per-gain.js';

/** A change that surely gains, and what is known of it. */
export interface Gaining {
  readonly gain: Estimate;
  readonly offer?: Offer | null | undefined;
}

/**
 * Which of several changes to begin with, by one rule for all studies: the cheapest of those that are enough
 * alone; where none is, the one that costs least for what it brings; where no price is known, the one that
 * brings most. What needs other changes has no price by itself.
 */
export function advised<Change extends Gaining>(
  all: readonly Change[],
  isEnough: (change: Change) => boolean = () => false,
): Change | undefined {
  const enough = all.filter(isEnough),
    best = byGain(enough.length > 0 ? enough : all)[0];
  return enough.length > 0
    ? (least(enough, ({ offer }) => priceOf(offer)) ?? best)
    : (least(all, ({ offer, gain }) => {
        const price = priceOf(offer);
        return price === null ? null : (pricePerGain(price, gain)?.mean ?? null);
      }) ?? best);
}

const byGain = <Change extends Gaining>(all: readonly Change[]): Change[] =>
  [...all].sort((a, b) => b.gain.mean - a.gain.mean);

const priceOf = (offer: Gaining['offer']): number | null =>
  offer == null || offer.needs.length > 0 ? null : offer.price;

/** The one with the least of those that have any; of equal ones that which gains more. */
function least<Change extends Gaining>(
  all: readonly Change[],
  of: (change: Change) => number | null,
): Change | undefined {
  return byGain(all)
    .flatMap((change) => {
      const amount = of(change);
      return amount === null ? [] : [{ change, amount }];
    })
    .sort((a, b) => a.amount - b.amount)[0]?.change;
}
