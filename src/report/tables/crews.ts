import type { Results } from '../../study/simulate/results.js';
import { number, short } from '../../study/format.js';
import type { PageTable } from './overall.js';

export function crews(results: Results, interval: string): PageTable {
  return {
    id: 'crews',
    title: 'Crews',
    note:
      'Busy: engaged person-time over that of the people on shift; hours: of people who were ' +
      `there, over the time observed; ${interval}.`,
    head: ['Crew', 'Site', 'Headcount', 'Busy, %', 'Usual person-hours', 'Overtime person-hours'],
    rows: results.crews.map((crew) => [
      crew.name,
      crew.site,
      (crew.headcounts ?? [crew.headcount]).join(', '),
      short(crew.busy, 100),
      short(crew.usualHours),
      short(crew.overtimeHours),
    ]),
  };
}

export function overtimeTable({ overtime, series }: Results, interval: string): PageTable {
  return {
    id: 'overtime',
    title: 'Overtime by rule',
    note:
      'How often each rule was looked at, in what share its hours were worked, and how many that ' +
      `made a ${series.unit} on average; ${interval}.`,
    head: ['Rule', 'Looked at', 'Worked, %', `Hours a ${series.unit}`],
    rows: overtime.map(({ name, looked, worked, hours }) => [
      name,
      short(looked),
      short(worked, 100),
      number(hours.reduce((sum, each) => sum + each.mean, 0) / Math.max(1, hours.length)),
    ]),
  };
}

export function shutdownTable({ shutdowns }: Results): PageTable {
  return {
    id: 'shutdowns',
    title: 'Planned shutdowns',
    note: 'Days off of a calendar, both ends included.',
    head: ['Calendar', 'From', 'To', 'What for'],
    rows: shutdowns.map(({ calendar, from, to, note }) => [calendar, from, to, note ?? '']),
  };
}
