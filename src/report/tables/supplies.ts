import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { judgedFirst } from '../constraint.js';

export function supplies(results: Results, interval: string): PageTable {
  return {
    id: 'supplies',
    title: 'Supplies',
    note:
      'Out: share of time without stock; on order: mean, of a plan of deliveries what is overdue; waits: ' +
      'times that a unit or sub-assembly lacked the part, a replication, and their mean length by the ' +
      `clock; ${interval}.`,
    ...columns(results.supplies, [
      ['Supply', 'name'],
      ['Site', 'site'],
      ['By', 'by'],
      ['Mean stock', 'stock'],
      ['Least stock', 'least'],
      ...judgedFirst('Out, % of time', results.constraint?.judged?.supplies, ({ out }) => out),
      ['On order', 'onOrder'],
      ['Lots', 'lots'],
      ['Late lots', 'lateLots'],
      ['Waits', 'waits'],
      ['Wait, h', 'waitHours'],
    ]),
  };
}
