import { asEstimate, daysOf, daysText, number, short } from '../../study/format.js';
import type { CaughtUp, UnitsBehind } from '../../study/programme/recovery.js';
import type { OutageResult, RecoveryResult } from '../../study/sections/outages.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable } from '../columns.js';
import { type Cell, dayPart, estimated, estimateParts, percent, rounded } from '../sheets/cells.js';

export function failures(results: Results, interval: string): PageTable {
  return {
    id: 'failures',
    title: 'Failures',
    note:
      'Failures in the time observed, over all places; down: from a failure to the end of its repair, by ' +
      'the clock; available: share of place time on shift, failures and outages both taken off; ' +
      `${interval}.`,
    ...columns(results.failures, [
      ['Station', 'name'],
      ['Site', 'site'],
      ['Places', 'places'],
      ['Failures', (each) => estimated(each.failures)],
      ['Mean down, h', 'downHours'],
      ['Longest down, h', 'longestDownHours'],
      ['Available, %', 'availability', percent],
    ]),
  };
}

export function outages(results: Results): PageTable {
  return {
    id: 'outages',
    title: 'Outages',
    note: 'Known beforehand; days of 24 h.',
    ...columns(results.outages, [
      ['Outage', 'name'],
      ['When', daysCell],
      ['Days', ({ days }) => rounded(days)],
      ['Stations down', ({ stations }) => stations.join(', ')],
      ['Lanes without a departure', ({ lanes }) => lanes.join(', ')],
    ]),
  };
}

export function recoveries(results: Results, interval: string): PageTable {
  const pairs = results.recoveries[0]?.replications ?? 0;
  return {
    id: 'recoveries',
    title: 'What outages cost',
    note:
      `The build against the same build without the outage, paired over the first ${pairs} replications. ` +
      'Behind: units shipped without it less those shipped with it, at the most on the day given. Caught ' +
      'up: for a week no fewer are shipped in all than without it; dates over replications with ' +
      `order-statistic intervals, share with its Wilson interval; ${interval}.`,
    ...columns(results.recoveries, [
      ['Without', namesOf],
      ['Units behind at the most', ({ behindMost }) => onDay(behindMost)],
      [
        'at the end of the weeks judged',
        ({ behindJudged }) => (behindJudged === null ? '' : onDay(behindJudged)),
      ],
      [
        'lost a working day of these weeks',
        ({ behindJudged }) => (behindJudged === null ? '' : estimated(behindJudged.perDay)),
      ],
      ['at the end of the run', 'behindAtEnd'],
      ['Last unit later, days', 'daysLater'],
      ['Caught up, % of replications', ({ caughtUp }) => percent(asEstimate(caughtUp))],
      caughtUpBy(0.5),
      caughtUpBy(0.8),
    ]),
  };
}

const caughtUpBy = (quantile: number): Column<RecoveryResult> => [
  `Caught up by, P${number(quantile * 100)}`,
  ({ caughtUpBy }) => {
    const found = caughtUpBy.find(({ p }) => p === quantile);
    return found === undefined ? '' : dateCell(found);
  },
];

function daysCell(outage: OutageResult): Cell {
  const { first, last } = daysOf(outage);
  return { text: daysText(outage), parts: [dayPart('from', first), dayPart('to', last)] };
}

/** `new paint line, 2027-08-09 to 2027-08-20`. */
export const namesOf = ({ names, ...time }: Pick<RecoveryResult, 'names' | 'from' | 'to'>): string =>
  `${names.join(' and ')}, ${daysText(time)}`;

const onDay = ({ units, date }: UnitsBehind): Cell => ({
  text: `${short(units)}, ${date}`,
  parts: [...estimateParts(units), dayPart('on', date)],
});

/** `2027-09-12 (2027-09-10 to 2027-09-15)`, or what is known and why no more. */
function dateCell({ date, lowDate, highDate, why }: CaughtUp): Cell {
  if (date === null) return `not known; ${why ?? ''}`;
  return {
    text:
      lowDate === null || highDate === null
        ? `${date} (no interval; ${why ?? ''})`
        : `${date} (${lowDate} to ${highDate})`,
    parts: [dayPart('', date), dayPart('low', lowDate), dayPart('high', highDate)],
  };
}
