import type { Results } from '../../study/simulate/results.js';
import type { DaysQuantile, OutageResult } from '../../study/sections/outages.js';
import { asEstimate, number, short } from '../format.js';
import type { PageTable } from './overall.js';

export function failures(results: Results, interval: string): PageTable {
  return {
    id: 'failures',
    title: 'Failures',
    note:
      'Failures in the time observed, over all places; down: from a failure to the end of its ' +
      'repair, by the clock; available: share of place time on shift, failures and outages both ' +
      `taken off; ${interval}.`,
    head: ['Station', 'Site', 'Places', 'Failures', 'Mean down, h', 'Longest down, h', 'Available, %'],
    rows: results.failures.map((each) => [
      each.name,
      each.site,
      String(each.places),
      short(each.failures),
      ifAny(each.downHours, short),
      ifAny(each.longestDownHours, short),
      short(each.availability, 100),
    ]),
  };
}

export function outages(results: Results, interval: string): PageTable {
  return {
    id: 'outages',
    title: 'Outages',
    note:
      'Recovered: no more units are open (released and not yet out) than when the outage began; ' +
      'days from its end, with order-statistic intervals; share of replications with its Wilson ' +
      `interval; ${interval}.`,
    head: [
      'Outage',
      'Days',
      'Open units at its beginning',
      'Recovered, % of replications',
      'Days to recover, P50',
      'Days to recover, P80',
    ],
    rows: results.outages.map((each) => [
      datesOf(each),
      number(each.days),
      ifAny(each.openUnits, short),
      each.recovered === null ? 'did not begin' : short(asEstimate(each.recovered), 100),
      ...each.recoveryDays.map(daysText),
    ]),
  };
}

/** `new paint line, 2027-08-09 to 2027-08-20`. */
export function datesOf({ name, from, to }: OutageResult): string {
  const first = from.slice(0, 10),
    last = lastDay(to);
  return `${name}, ${first === last ? first : `${first} to ${last}`}`;
}

/** The last day that belongs to an outage which is over at this local time. */
const lastDay = (to: string): string => new Date(Date.parse(`${to}Z`) - 1).toISOString().slice(0, 10);

/** `12 (10 to 15)`, or what is known and why no more. */
export function daysText({ days, low, high, why }: DaysQuantile): string {
  if (days === null) return `not known; ${why ?? ''}`;
  return low === null || high === null
    ? `${number(days)} (no interval; ${why ?? ''})`
    : `${number(days)} (${number(low)} to ${number(high)})`;
}

function ifAny<T extends { readonly n: number }>(estimate: T, write: (estimate: T) => string): string {
  return estimate.n === 0 ? 'none' : write(estimate);
}
