import type { Results } from '../../study/simulate/results.js';
import type { PageTable } from '../columns.js';
import { estimated } from '../sheets/cells.js';

/** A row for each station with changeovers, and one below it for each pair of values. */
export function changeovers(results: Results, interval: string): PageTable {
  return {
    id: 'changeovers',
    title: 'Changeovers',
    note:
      'Per 100 units that took a place of the station; work in hours a week of the calendar; ' +
      `${interval}.`,
    head: ['Station', 'From', 'To', 'Changeovers per 100 units', 'Hours a week', 'Minutes each'],
    rows: results.changeovers.flatMap(({ name, option, per100Units, hoursPerWeek, pairs }) => [
      [name, `any ${option}`, 'another', estimated(per100Units), estimated(hoursPerWeek), ''],
      ...pairs.map((pair) => [
        name,
        pair.from,
        pair.to,
        estimated(pair.per100Units),
        '',
        estimated(pair.minutes),
      ]),
    ]),
  };
}
