import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { judgedFirst } from '../constraint.js';

export function equipment(results: Results, interval: string): PageTable {
  return {
    id: 'equipment',
    title: 'Shared equipment',
    note:
      'In use: time with a unit over the time in its hours, of all pieces, repairs of what failed in use ' +
      'included; waiting: places that wait for it, mean over all time; waits: how often one had to, a ' +
      `replication, and their mean length by the clock; down: of one repair, by the clock; ${interval}.`,
    ...columns(results.equipment ?? [], [
      ['Equipment', 'name'],
      ['Site', 'site'],
      ['Number', 'count'],
      ...judgedFirst('In use, %', results.constraint?.judged?.equipment, ({ busy }) => busy),
      ['Waiting', 'waiting'],
      ['Waits', 'waits'],
      ['Wait, h', 'waitHours'],
      ['Failures', 'failures'],
      ['Mean down, h', 'downHours'],
    ]),
  };
}
