import { short } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../page-table.js';

export function supplies(results: Results, interval: string): PageTable {
  return {
    id: 'supplies',
    title: 'Supplies',
    note:
      'Out: share of time without stock; on order: mean, of a plan of deliveries what is overdue; waits: ' +
      'times that a unit or sub-assembly lacked the part, a replication, and their mean length by the ' +
      `clock; ${interval}.`,
    ...columns(results.supplies, [
      ['Supply', ({ name }) => name],
      ['Site', ({ site }) => site],
      ['By', ({ by }) => by],
      ['Mean stock', ({ stock }) => short(stock)],
      ['Least stock', ({ least }) => short(least)],
      ['Out, % of time', ({ out }) => percent(out)],
      ['On order', ({ onOrder }) => short(onOrder)],
      ['Lots', ({ lots }) => short(lots)],
      ['Late lots', ({ lateLots }) => short(lateLots)],
      ['Waits', ({ waits }) => short(waits)],
      ['Wait, h', ({ waitHours }) => short(waitHours)],
    ]),
  };
}
