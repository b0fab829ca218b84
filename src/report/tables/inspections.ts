import { short } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../page-table.js';

export function inspections(results: Results, interval: string): PageTable {
  return {
    id: 'inspections',
    title: 'Inspections',
    note: `First-time-through counts first visits only; the other figures are per 100 visits; ${interval}.`,
    ...columns(results.inspections, [
      ['Inspection', ({ name }) => name],
      ['Site', ({ site }) => site],
      ['First-time-through, %', ({ ftt }) => percent(ftt)],
      ['Inspected per unit', ({ inspectedPerUnit }) => short(inspectedPerUnit)],
      ['Sent back', ({ sentBackPer100 }) => short(sentBackPer100)],
      ['Repaired', ({ repairedPer100 }) => short(repairedPer100)],
      ['Scrapped', ({ scrappedPer100 }) => short(scrappedPer100)],
      ['Escaped', ({ escapedPer100 }) => short(escapedPer100)],
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
      ['First', ({ first }) => first],
      ['Second', ({ second }) => second],
      ['Units', ({ units }) => short(units)],
      ['Good, good', ({ goodGood }) => percent(goodGood)],
      ['Good, bad', ({ goodBad }) => percent(goodBad)],
      ['Bad, good', ({ badGood }) => percent(badGood)],
      ['Bad, bad', ({ badBad }) => percent(badBad)],
      ['They agree', ({ agreement }) => percent(agreement)],
      ['Extra work, h', ({ extraHours }) => short(extraHours)],
    ]),
  };
}
