import type { Results } from '../../study/simulate/results.js';
import { short } from '../../study/format.js';
import type { PageTable } from './overall.js';

/** A row for each station with changeovers, and one below it for each pair of values. */
export function changeoverTable({ changeovers }: Results, interval: string): PageTable {
  return {
    id: 'changeovers',
    title: 'Changeovers',
    note:
      'Per 100 units that took a place of the station; work in hours a week of the calendar; ' +
      `${interval}.`,
    head: ['Station', 'From', 'To', 'Changeovers per 100 units', 'Hours a week', 'Minutes each'],
    rows: changeovers.flatMap((each) => [
      [each.name, `any ${each.option}`, 'another', short(each.per100Units), short(each.hoursPerWeek), ''],
      ...each.pairs.map((pair) => [
        each.name,
        pair.from,
        pair.to,
        short(pair.per100Units),
        '',
        short(pair.minutes),
      ]),
    ]),
  };
}
