import { number } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../columns.js';

export function carriers(results: Results, interval: string): PageTable {
  return {
    id: 'carriers',
    title: 'Carriers',
    note:
      'Mean numbers with units, on the way back and free; hold: mean time with one unit, the way back not ' +
      `included; ${interval}.`,
    ...columns(results.carriers, [
      ['Carriers', 'name'],
      ['Site', 'site'],
      ['Count', ({ count }) => number(count)],
      ['In use', 'inUse'],
      ['On the way back', 'comingBack'],
      ['Free', 'free'],
      ['None free, % of time', 'noneFree', percent],
      ['Hold, h', 'holdHours'],
    ]),
  };
}

export function teams(results: Results, interval: string): PageTable {
  return {
    id: 'teams',
    title: 'Teams',
    note:
      'Mean number of such teams with units; hold: mean time with one unit, nights included; ' +
      `${interval}.`,
    ...columns(results.teams, [
      ['Team', 'name'],
      ['Site', 'site'],
      ['Crew', 'crew'],
      ['People', ({ people }) => number(people)],
      ['In use', 'inUse'],
      ['Hold, h', 'holdHours'],
    ]),
  };
}
