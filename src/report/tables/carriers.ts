import type { TeamResult } from '../../study/sections/carriers.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable } from '../columns.js';
import { judgedFirst } from '../constraint.js';
import { estimated, rounded } from '../sheets/cells.js';

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
      ['Count', ({ count }) => rounded(count)],
      ['In use', 'inUse'],
      ['On the way back', 'comingBack'],
      ['Free', 'free'],
      ...judgedFirst(
        'None free, % of time',
        results.constraint?.judged?.carriers,
        ({ noneFree }) => noneFree,
      ),
      ['Hold, h', 'holdHours'],
    ]),
  };
}

export function teams(results: Results, interval: string): PageTable {
  const mayLack = results.teams.some(({ withoutPeople }) => withoutPeople !== undefined);
  return {
    id: 'teams',
    title: 'Teams',
    note:
      `Mean number of such teams with units${mayLack ? BESIDE : ''}; hold: mean time with one unit, ` +
      `nights included; ${interval}.`,
    ...columns(results.teams, [
      ['Team', 'name'],
      ['Site', 'site'],
      ['Crew', 'crew'],
      ['People', ({ people }) => rounded(people)],
      ...judgedFirst('In use', results.constraint?.judged?.teams, ({ inUse }) => inUse, estimated),
      ...(mayLack ? [WITHOUT] : []),
      ['Hold, h', 'holdHours'],
    ]),
  };
}

const BESIDE = ', and of those without people, as too few are there';
const WITHOUT: Column<TeamResult> = [
  'Without people',
  ({ withoutPeople }) => (withoutPeople === undefined ? '' : estimated(withoutPeople)),
];
