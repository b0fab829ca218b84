import { exact, number } from '../../study/format.js';
import type { Offer } from '../../study/priced/offer.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { onEveryShift } from '../constraint.js';
import { figure } from './figures.js';

/**
 * `its price is 410,000 EUR (854 EUR on each unit), ready 5 months after it is ordered`, or that it is not
 * given.
 * @param offer null, undefined: the scenario does not name the change
 */
export function priceText(offer: Offer | null | undefined, whose = 'its price'): string {
  if (offer == null) return `${whose} is not given`;
  const { price, pricePerUnit, day, readyAfter, needs, currency: money } = offer;
  return [
    price === null
      ? `${whose} is not given`
      : `${whose} is ${exact(price)} ${money}` +
        (pricePerUnit === null || price === 0 ? '' : ` (${number(pricePerUnit)} ${money} on each unit)`),
    ...(readyAfter === null ? [] : [`ready ${readyAfter} after it is ordered`]),
    ...(needs.length === 0 ? [] : [`not without ${needs.map((name) => `“${name}”`).join(' and ')}`]),
    ...(day === 0 ? [] : [`then ${exact(day)} ${money} a day`]),
  ].join(', ');
}

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
