import { exact, number } from '../../study/format.js';
import type { Offer } from '../../study/priced/offer.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import { onEveryShift } from '../constraint.js';
import { figure, range } from './figures.js';

/**
 * `its price is 410,000 EUR (854 EUR a unit), ready 5 months after it is ordered`, or that it is not given.
 * @param offer null, undefined: the scenario does not name the change
 */
export function priceText(offer: Offer | null | undefined): string {
  if (offer == null) return 'its price is not given';
  const { price, pricePerUnit, day, readyAfter, needs, currency: money } = offer;
  return [
    price === null
      ? 'its price is not given'
      : `its price is ${exact(price)} ${money}` +
        (pricePerUnit === null || price === 0 ? '' : ` (${number(pricePerUnit)} ${money} a unit)`),
    ...(readyAfter === null ? [] : [`ready ${readyAfter} after it is ordered`]),
    ...(needs.length === 0 ? [] : [`not without ${needs.map((name) => `“${name}”`).join(' and ')}`]),
    ...(day === 0 ? [] : [`then ${exact(day)} ${money} a day`]),
  ].join(', ');
}

/** So many by price are told on the first screen. */
const TOLD = 2;

/** Which changes cost least for each unit that they surely bring, in a sentence; none where none has a price. */
export function leastForMoney({ reliefs, base: { currency }, rateUnit }: ReliefsResults): string[] {
  const ranked = reliefs
    .flatMap(({ text, pricePerGain, rankPerPrice }) =>
      pricePerGain == null || rankPerPrice == null ? [] : [{ text, pricePerGain, rankPerPrice }],
    )
    .sort((a, b) => a.rankPerPrice - b.rankPerPrice)
    .slice(0, TOLD)
    .map(
      ({ text, pricePerGain }) =>
        `${onEveryShift(text)}, ${figure(pricePerGain)} ${currency ?? ''} (${range(pricePerGain)})`,
    );
  return ranked.length === 0
    ? []
    : [`Least money for each unit a ${rateUnit.per} more: ${ranked.join('; then ')}.`];
}
