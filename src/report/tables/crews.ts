import type { CrewResult } from '../../study/sections/crews.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { judgedFirst } from '../constraint.js';
import { type Cell, counted, day, percent, rounded } from '../sheets/cells.js';

export function crews(results: Results, interval: string): PageTable {
  return {
    id: 'crews',
    title: 'Crews',
    note:
      'Busy: engaged person-time over that of the people on shift; hours: of people who were there, over ' +
      `the time observed; ${interval}.`,
    ...columns(results.crews, [
      ['Crew', 'name'],
      ['Site', 'site'],
      ['Headcount', headcountOf],
      ...judgedFirst('Busy, %', results.constraint?.judged?.crews, ({ busy }) => busy),
      ['Usual person-hours', 'usualHours'],
      ['Overtime person-hours', 'overtimeHours'],
    ]),
  };
}

/** On every shift, where they differ. */
const headcountOf = ({ headcount, headcounts }: CrewResult): Cell =>
  headcounts === null ? counted(headcount) : headcounts.join(', ');

export function overtime({ overtime: rules, series }: Results, interval: string): PageTable {
  return {
    id: 'overtime',
    title: 'Overtime by rule',
    note:
      'How often each rule was looked at, in what share its hours were worked, and how many that made a ' +
      `${series.unit} on average; ${interval}.`,
    ...columns(rules, [
      ['Rule', 'name'],
      ['Looked at', 'looked'],
      ['Worked, %', 'worked', percent],
      [
        `Hours a ${series.unit}`,
        ({ hours }) => rounded(hours.reduce((sum, each) => sum + each.mean, 0) / Math.max(1, hours.length)),
      ],
    ]),
  };
}

export function shutdowns(results: Results): PageTable {
  return {
    id: 'shutdowns',
    title: 'Planned shutdowns',
    note: 'Days off of a calendar, both ends included.',
    ...columns(results.shutdowns, [
      ['Calendar', 'calendar'],
      ['From', ({ from }) => day(from)],
      ['To', ({ to }) => day(to)],
      ['What for', 'note'],
    ]),
  };
}
