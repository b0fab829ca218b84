import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { exact } from '../../../study/format.js';
import { columns, type PageTable } from '../../columns.js';
import { dateOrNot, dueOf, lateText, standsAt, whereTheyStand } from '../../first/records/forecast-told.js';
import { type Cell, counted, day, valued } from '../../sheets/cells.js';

/** Orders that a table names in a cell. */
const MOST_NAMED = 12;

export function ordersTable(results: ForecastResults): PageTable {
  const { orders, replications } = results,
    out = (date: string | null): Cell => (date === null ? dateOrNot(date) : day(date)),
    isDue = dueOf(results).length > 0;
  return {
    id: 'orders',
    title: 'Orders',
    note:
      (isDue
        ? `The likeliest to be late first, then by date. Late in: of ${exact(replications)} builds; days ` +
          'late: in half of the builds in which it is late. '
        : 'By date. ') + 'Out by: in half and in four of five of the builds.',
    ...columns(orders, [
      ['Order', 'unit'],
      ['Stands at', standsAt],
      ...(isDue
        ? ([
            ['Due', ({ due }: (typeof orders)[number]) => day(due)],
            ['Late in', (order: (typeof orders)[number]) => late(order, replications)],
            ['Days late', 'daysLate'],
          ] as const)
        : []),
      ['Out by, half', ({ half }) => out(half)],
      ['Out by, four of five', ({ fourInFive }) => out(fourInFive)],
    ]),
  };
}

const late = (order: ForecastResults['orders'][number], replications: number): Cell =>
  order.late === null ? '' : valued(lateText(order, replications), order.late, 'count');

export function standingTable(results: ForecastResults): PageTable {
  return {
    id: 'standing',
    title: 'Where units stand',
    note: `On ${results.at}, by step; those not released are still to come in.`,
    ...columns(whereTheyStand(results.orders), [
      ['Step', 'place'],
      ['Units', ({ units }) => counted(units.length)],
      ['Which', ({ units }) => which(units.map(({ unit }) => unit))],
    ]),
  };
}

function which(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return names.slice(0, MOST_NAMED).join(', ') + (more > 0 ? ` and ${exact(more)} more` : '');
}
