import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { percent } from '../sheets/cells.js';

export function inspections(results: Results, interval: string): PageTable {
  return {
    id: 'inspections',
    title: 'Inspections',
    note: `First-time-through counts first visits only; the other figures are per 100 visits; ${interval}.`,
    ...columns(results.inspections, [
      ['Inspection', 'name'],
      ['Site', 'site'],
      ['First-time-through, %', 'ftt', percent],
      ['Inspected per unit', 'inspectedPerUnit'],
      ['Sent back', 'sentBackPer100'],
      ['Repaired', 'repairedPer100'],
      ['Scrapped', 'scrappedPer100'],
      ['Escaped', 'escapedPer100'],
    ]),
  };
}

export function comparisons(results: Results, interval: string): PageTable {
  return {
    id: 'comparisons',
    title: 'Second measurements',
    note:
      'Units at the first visits of both, in %: nothing found (good) or something (bad) at the first and ' +
      `at the second; ${interval}.`,
    ...columns(results.comparisons, [
      ['First', 'first'],
      ['Second', 'second'],
      ['Units', 'units'],
      ['Good, good', 'goodGood', percent],
      ['Good, bad', 'goodBad', percent],
      ['Bad, good', 'badGood', percent],
      ['Bad, bad', 'badBad', percent],
      ['They agree', 'agreement', percent],
      ['Extra work, h', 'extraHours'],
    ]),
  };
}
