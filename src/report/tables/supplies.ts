import type { Results } from '../../study/simulate/results.js';
import { short } from '../../study/format.js';
import type { PageTable } from './overall.js';

export function suppliesTable({ supplies }: Results, interval: string): PageTable {
  return {
    id: 'supplies',
    title: 'Supplies',
    note:
      'Out: share of time without stock; on order: mean, of a plan of deliveries what is overdue; ' +
      'waits: times that a unit or sub-assembly lacked the part, a replication, and their mean ' +
      `length by the clock; ${interval}.`,
    head: [
      'Supply',
      'Site',
      'By',
      'Mean stock',
      'Least stock',
      'Out, % of time',
      'On order',
      'Lots',
      'Late lots',
      'Waits',
      'Wait, h',
    ],
    rows: supplies.map((each) => [
      each.name,
      each.site,
      each.by,
      short(each.stock),
      short(each.least),
      short(each.out, 100),
      short(each.onOrder),
      short(each.lots),
      short(each.lateLots),
      short(each.waits),
      short(each.waitHours),
    ]),
  };
}
