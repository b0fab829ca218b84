import type { ReliefResult } from '../reliefs/results.js';
import { surelyGains } from '../reliefs/runs.js';
import type { Estimate } from '../statistics/estimate.js';

/**
 * Money, once, for each unit that is gained in the planner's unit of time; null unless it surely gains. The
 * price is known, so its interval is that of the gain turned over, with the same level.
 */
export function pricePerGain(price: number, gain: Estimate): Estimate | null {
  const { low, high } = gain;
  if (!surelyGains(gain) || low === null || high === null) return null;
  return { ...gain, mean: price / gain.mean, low: price / high, high: price / low };
}

/**
 * With the price of each unit gained and the rank by it, the least first, where the scenario names changes.
 * What needs others that were not made with it cannot be bought so, and has no rank.
 */
export function rankedByPrice(all: readonly ReliefResult[]): ReliefResult[] {
  if (all.every(({ offer }) => offer === undefined)) return [...all];
  const priced = all.map((each): ReliefResult => {
      const { offer, gain } = each,
        isWhole = offer != null && offer.price !== null && offer.needs.length === 0;
      return { ...each, pricePerGain: isWhole ? pricePerGain(offer.price, gain) : null };
    }),
    ranked = priced
      .filter((each) => each.pricePerGain != null)
      .sort((a, b) => (a.pricePerGain?.mean ?? 0) - (b.pricePerGain?.mean ?? 0) || b.gain.mean - a.gain.mean);
  return priced.map((each) => ({
    ...each,
    rankPerPrice: ranked.includes(each) ? ranked.indexOf(each) + 1 : null,
  }));
}
