import { asEstimate, number } from '../../study/format.js';
import type { DaysQuantile, OutageResult } from '../../study/sections/outages.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable, percent } from '../columns.js';
import { ifAny } from './failures.js';

export function outages(results: Results, interval: string): PageTable {
  return {
    id: 'outages',
    title: 'Outages',
    note:
      'Recovered: no more units are open (released and not yet out) than when the outage began; days from ' +
      'its end, with order-statistic intervals; share of replications with its Wilson interval; ' +
      `${interval}.`,
    ...columns(results.outages, [
      ['Outage', datesOf],
      ['Days', ({ days }) => number(days)],
      ['Open units at its beginning', ({ openUnits }) => ifAny(openUnits)],
      [
        'Recovered, % of replications',
        ({ recovered }) => (recovered === null ? 'did not begin' : percent(asEstimate(recovered))),
      ],
      recovery(0.5),
      recovery(0.8),
    ]),
  };
}

const recovery = (quantile: number): Column<OutageResult> => [
  `Days to recover, P${number(quantile * 100)}`,
  ({ recoveryDays }) =>
    recoveryDays
      .filter(({ p }) => p === quantile)
      .map(daysText)
      .join(),
];

/** `new paint line, 2027-08-09 to 2027-08-20`. */
export function datesOf({ name, from, to }: OutageResult): string {
  const first = from.slice(0, 10),
    last = lastDay(to);
  return `${name}, ${first === last ? first : `${first} to ${last}`}`;
}

/** The last day that belongs to an outage which is over at this local time. */
const lastDay = (to: string): string => new Date(Date.parse(`${to}Z`) - 1).toISOString().slice(0, 10);

/** `12 (10 to 15)`, or what is known and why no more. */
function daysText({ days, low, high, why }: DaysQuantile): string {
  if (days === null) return `not known; ${why ?? ''}`;
  return low === null || high === null
    ? `${number(days)} (no interval; ${why ?? ''})`
    : `${number(days)} (${number(low)} to ${number(high)})`;
}
