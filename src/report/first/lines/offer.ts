import { exact, number } from '../../../study/format.js';
import type { Offer } from '../../../study/priced/offer.js';
import type { Estimate } from '../../../study/statistics/estimate.js';

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

/** What to do first, and its price: `begin with “second booth”, for 410,000 EUR once`. */
export const beginWith = (what: string, offer: Offer | null | undefined): string =>
  `begin with ${what}${forPrice(offer)}`;

/** `, for 410,000 EUR once`, or that the price is not given; and what it needs besides. */
export function forPrice(offer: Offer | null | undefined): string {
  const needs = (offer?.needs ?? []).map((name) => `“${name}”`).join(' and ');
  return (
    (offer?.price == null ? ` (${NOT_GIVEN})` : `, for ${exact(offer.price)} ${offer.currency} once`) +
    (needs === '' ? '' : `, not without ${needs}`)
  );
}

/** `Price: 410,000 EUR, 854 a unit.`; nothing where no more is known of it than `forPrice` says. */
export function priceInFull(offer: Offer | null | undefined): string {
  const text = priceText(offer);
  return text.includes(', ') ? `Price: ${text}.` : '';
}

/** A figure of cost is without what the change itself costs: what is left with that shared out, if known. */
export function withItsPrice(change: Estimate, offer?: Offer | null): string {
  if (offer?.pricePerUnit == null) return ', the price of the change not counted';
  const left = Math.round((change.mean + offer.pricePerUnit) / 10) * 10,
    by = `${exact(Math.abs(left))} ${left < 0 ? 'less' : 'more'}`,
    daily = offer.day === 0 ? '' : `, without its ${exact(offer.day)} ${offer.currency} a day`;
  return `; with its price shared out over all units about ${by}${daily}`;
}

/** Said of what brings most for its price where something else brings more. */
export const FOR_THE_MONEY = ', most for the money';

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
