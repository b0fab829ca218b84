import { exact, number } from '../../study/format.js';
import type { Offer } from '../../study/priced/offer.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { onEveryShift } from '../constraint.js';
import { figure } from './figures.js';

/**
 * `410,000 EUR, 854 a unit, ready 5 months after the order`, or that the price is not given.
 * @param offer null, undefined: the scenario does not name the change
 */
export function priceText(offer: Offer | null | undefined): string {
  if (offer == null) return NOT_GIVEN;
  const { price, pricePerUnit, day, readyAfter, needs, currency: money } = offer;
  return [
    ...(price === null ? [NOT_GIVEN] : [`${exact(price)} ${money}`]),
    ...(pricePerUnit === null || price === 0 ? [] : [`${number(pricePerUnit)} a unit`]),
    ...(readyAfter === null ? [] : [`ready ${readyAfter} after the order`]),
    ...(needs.length === 0 ? [] : [`not without ${needs.map((name) => `“${name}”`).join(' and ')}`]),
    ...(day === 0 ? [] : [`then ${exact(day)} ${money} a day`]),
  ].join(', ');
}

const NOT_GIVEN = 'price not given';

/** What to do first, and its price: `begin with one place more at booth (410,000 EUR)`. */
export const beginWith = (what: string, offer: Offer | null | undefined): string =>
  `begin with ${what} (${priceText(offer)})`;

/** A figure of cost is not what the change itself costs. */
export const BESIDE = ', the price of the change not counted';

/** The command that finds what it takes in all, where the scenario says what changes could be made. */
export const whatItTakes = (
  file: string,
  changes: readonly { readonly offer?: Offer | null | undefined }[] | undefined,
  rate?: number,
): { readonly what: string; readonly command: string } | null =>
  changes?.some(({ offer }) => offer !== undefined) === true
    ? {
        what: 'What it takes in all, for the least money',
        command: `rateproof reach ${file}${rate === undefined ? '' : ` --rate ${rate}`}`,
      }
    : null;

/** Digits of a price over a gain: the interval is much wider above than below, and no guide. */
const DIGITS = 2;
/** `16,000` */
export const roughMoney = (value: number): string => exact(Number(value.toPrecision(DIGITS)));

/** `16,000 (13,000 to 20,000)` */
export const roughRange = ({ mean, low, high }: Estimate): string =>
  roughMoney(mean) + (low === null || high === null ? '' : ` (${roughMoney(low)} to ${roughMoney(high)})`);

/** So many by price are told on the first screen. */
const TOLD = 2;

/** Which changes cost least for what they surely bring, in a sentence; none: none has a price. */
export function leastForMoney({ reliefs, rateUnit }: ReliefsResults): string[] {
  const ranked = reliefs
    .flatMap(({ text, gain, offer, rankPerPrice }) =>
      offer?.price == null || rankPerPrice == null ? [] : [{ text, gain, offer, rankPerPrice }],
    )
    .sort((a, b) => a.rankPerPrice - b.rankPerPrice)
    .slice(0, TOLD)
    .map(
      ({ text, gain, offer }) =>
        `${onEveryShift(text)}, ${exact(offer.price ?? 0)} ${offer.currency} for ${figure(gain)} ` +
        `a ${rateUnit.per}`,
    );
  return ranked.length === 0 ? [] : [`Most for the money: ${ranked.join('; then ')}.`];
}
