import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { count, exact } from '../../../study/format.js';
import { forecastFirst } from '../../first/records/forecast.js';
import { dateOrNot, forecastInFull, standsAt } from '../../first/records/forecast-told.js';
import { firstPieces } from '../first.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';
import { IN_FILES } from './odd-rows.js';

/** So many orders are told; the files have all. */
const MOST_ROWS = 40;

/** What the page says, then a row an order, as plain text of at most `width` columns. */
export function forecastTable(results: ForecastResults, width?: number): string {
  const { orders, replications, seed, log, notes } = results;
  return joined(
    [
      ...firstPieces(forecastFirst(results), forecastInFull(results)),
      '',
      `${count(replications, 'build')}, seed ${seed}; ` +
        'late: in so many of them, and days late in half of these',
      ...log.told,
      ...notes,
      '',
      tableOf(orders.slice(0, MOST_ROWS), [
        { head: 'order', cell: 'unit' },
        { head: 'stands at', cell: standsAt },
        { head: 'due', cell: ({ due }) => due ?? '' },
        { head: 'late', align: 'right', cell: ({ late }) => (late === null ? '' : exact(late)) },
        {
          head: 'days late',
          align: 'right',
          cell: ({ daysLate }) => (daysLate === null ? '' : exact(daysLate)),
        },
        { head: 'out by, half', cell: ({ half }) => dateOrNot(half) },
        { head: 'out by, four of five', cell: ({ fourInFive }) => dateOrNot(fourInFive) },
      ]),
      ...(orders.length > MOST_ROWS
        ? ['', `${count(orders.length - MOST_ROWS, 'order')} more ${IN_FILES}`]
        : []),
    ],
    width,
  );
}
