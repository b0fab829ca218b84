import { short } from '../../study/format.js';
import type { DefectResult } from '../../study/sections/defects.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { percent } from '../sheets/cells.js';

/** Rows of the table of defects on the page; all of them are in results.json. */
const TOP_DEFECTS = 20;

export function defects({ defects: all }: Results, interval: string): PageTable {
  const most = [...all].sort((a, b) => b.made.mean - a.made.mean).slice(0, TOP_DEFECTS),
    left = all.length - most.length;
  const cut = left > 0 ? `; the ${TOP_DEFECTS} of which most are made, ${left} more in results.json` : '';
  return {
    id: 'defects',
    title: 'Where defects are found',
    note:
      'Items made a replication, and where they were found for the first time, in % of those made' +
      `${cut}; ${interval}.`,
    ...columns(most, [
      ['Defect', 'kind'],
      ['Made at', 'madeAt'],
      ['Made', 'made'],
      ['Found at', foundAt],
      ['Shipped with it, never found, %', 'shippedWith', percent],
      ['Shipped with it, noted, %', 'shippedNoted', percent],
      ['Repair work, h', 'repairHours'],
    ]),
  };
}

const foundAt = ({ foundAt: finds }: DefectResult): string =>
  finds.length === 0
    ? 'nowhere'
    : finds.map(({ step, share, then }) => `${step} ${short(share, 100)}, ${then}`).join('; ');

export function escapes(results: Results, interval: string): PageTable {
  return {
    id: 'escapes',
    title: 'Escapes by site',
    note: `Items for each unit shipped, by the site where they are made; ${interval}.`,
    ...columns(results.escapes, [
      ['Made in', 'site'],
      ['Made', 'madePerUnit'],
      ['Found there', 'foundHerePerUnit'],
      ['Found in another site', 'foundElsewherePerUnit'],
      ['Shipped, never found', 'shippedWithPerUnit'],
    ]),
  };
}

export function holds(results: Results, interval: string): PageTable {
  return {
    id: 'holds',
    title: 'Holds',
    note:
      'Units with noted items wait here until these are mended; time from the end of the step before to ' +
      `the release, P95 of all units; ${interval}.`,
    ...columns(results.holds, [
      ['Hold', 'name'],
      ['Site', 'site'],
      ['Units held, %', 'heldShare', percent],
      ['Mean units held', 'units'],
      ['Days, mean', 'daysMean'],
      ['Days, P95', 'daysP95'],
      ['Items mended', 'mended'],
    ]),
  };
}

export function rework(results: Results, interval: string): PageTable {
  return {
    id: 'rework',
    title: 'Work done again',
    note:
      'Person-hours a replication of repairs, mending at holds, and steps done again after a send-back, ' +
      `the inspection that sent back included; ${interval}.`,
    ...columns(
      results.rework.filter(({ hours }) => hours.mean > 0),
      [
        ['Crew', 'crew'],
        ['Site', 'site'],
        ['Hours', 'hours'],
      ],
    ),
  };
}
