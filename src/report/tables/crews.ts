import { number } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../columns.js';
import { judgedFirst } from '../constraint.js';

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
      ['Headcount', ({ headcount, headcounts }) => (headcounts ?? [headcount]).join(', ')],
      ...judgedFirst('Busy, %', results.constraint?.judged?.crews, ({ busy }) => busy),
      ['Usual person-hours', 'usualHours'],
      ['Overtime person-hours', 'overtimeHours'],
    ]),
  };
}

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
        ({ hours }) => number(hours.reduce((sum, each) => sum + each.mean, 0) / Math.max(1, hours.length)),
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
      ['From', 'from'],
      ['To', 'to'],
      ['What for', 'note'],
    ]),
  };
}
