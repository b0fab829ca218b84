import type { Results } from '../../study/simulate/results.js';
import { short } from '../../study/format.js';
import type { PageTable } from './overall.js';

/** Parts of the cost of a unit, their sum, and apart from them what rework costs. */
export function costsTable({ costs }: Results, interval: string): PageTable {
  const head = {
    id: 'costs',
    title: 'Cost of a unit shipped',
    note: '',
    head: ['Part', 'A unit', 'Share, %'],
  };
  if (costs === null) return { ...head, rows: [] };
  const { currency, parts, perUnit, rework } = costs,
    percent = (share: number): string => (share * 100).toFixed(1);
  return {
    ...head,
    note:
      'Money for the whole time observed over the units shipped in it; people are paid for all ' +
      'their hours on shift. Rework is no further part: its people, send-backs and scrap are in ' +
      `those above; ${interval}.`,
    head: ['Part', `A unit, ${currency}`, 'Share, %'],
    rows: [
      ...parts.map((part) => [part.name, short(part.perUnit), percent(part.share)]),
      ['all', short(perUnit), '100.0'],
      [
        `of it rework (${short(rework.hoursPerUnit)} person-hours)`,
        short(rework.costPerUnit),
        perUnit.mean > 0 ? percent(rework.costPerUnit.mean / perUnit.mean) : '0.0',
      ],
    ],
  };
}
