import type { Estimate, Results } from '../../study/simulate/results.js';
import type { DefectResult } from '../../study/sections/defects.js';
import { short } from '../../study/format.js';
import type { PageTable } from './overall.js';

/** Rows of the table of defects on the page; all of them are in results.json. */
const TOP_DEFECTS = 20;

const percent = (share: Estimate): string => short(share, 100);

/** Where defects are found, escapes, holds, second measurements and work done again. */
export function qualityTables(results: Results, interval: string): PageTable[] {
  return [
    defects(results, interval),
    escapes(results, interval),
    holds(results, interval),
    comparisons(results, interval),
    rework(results, interval),
  ];
}

function defects({ defects: all }: Results, interval: string): PageTable {
  const most = [...all].sort((a, b) => b.made.mean - a.made.mean).slice(0, TOP_DEFECTS),
    left = all.length - most.length;
  return {
    id: 'defects',
    title: 'Where defects are found',
    note:
      'Items made a replication, and where they were found for the first time, in % of those ' +
      `made${left > 0 ? `; the ${TOP_DEFECTS} of which most are made, ${left} more in results.json` : ''}; ${interval}.`,
    head: [
      'Defect',
      'Made at',
      'Made',
      'Found at',
      'Shipped with it, never found, %',
      'Shipped with it, noted, %',
      'Repair work, h',
    ],
    rows: most.map((each) => [
      each.kind,
      each.madeAt,
      short(each.made),
      foundAt(each),
      percent(each.shippedWith),
      percent(each.shippedNoted),
      short(each.repairHours),
    ]),
  };
}

const foundAt = ({ foundAt: finds }: DefectResult): string =>
  finds.length === 0
    ? 'nowhere'
    : finds.map(({ step, share, then }) => `${step} ${percent(share)}, ${then}`).join('; ');

function escapes(results: Results, interval: string): PageTable {
  return {
    id: 'escapes',
    title: 'Escapes by site',
    note: `Items for each unit shipped, by the site where they are made; ${interval}.`,
    head: ['Made in', 'Made', 'Found there', 'Found in another site', 'Shipped, never found'],
    rows: results.escapes.map((each) => [
      each.site,
      short(each.madePerUnit),
      short(each.foundHerePerUnit),
      short(each.foundElsewherePerUnit),
      short(each.shippedWithPerUnit),
    ]),
  };
}

function holds(results: Results, interval: string): PageTable {
  return {
    id: 'holds',
    title: 'Holds',
    note:
      'Units with noted items wait here until these are mended; time from the end of the step ' +
      `before to the release; ${interval}.`,
    head: ['Hold', 'Site', 'Units held, %', 'Mean units held', 'Days, mean', 'Days, P95', 'Items mended'],
    rows: results.holds.map((each) => [
      each.name,
      each.site,
      percent(each.heldShare),
      short(each.units),
      short(each.daysMean),
      short(each.daysP95),
      short(each.mended),
    ]),
  };
}

function comparisons(results: Results, interval: string): PageTable {
  return {
    id: 'comparisons',
    title: 'Second measurements',
    note:
      'Units at the first visits of both, in %: nothing found (good) or something (bad) at the ' +
      `first and at the second; ${interval}.`,
    head: [
      'First',
      'Second',
      'Units',
      'Good, good',
      'Good, bad',
      'Bad, good',
      'Bad, bad',
      'They agree',
      'Extra work, h',
    ],
    rows: results.comparisons.map((each) => [
      each.first,
      each.second,
      short(each.units),
      percent(each.goodGood),
      percent(each.goodBad),
      percent(each.badGood),
      percent(each.badBad),
      percent(each.agreement),
      short(each.extraHours),
    ]),
  };
}

function rework(results: Results, interval: string): PageTable {
  return {
    id: 'rework',
    title: 'Work done again',
    note:
      'Person-hours a replication of repairs, mending at holds, and steps done again after a ' +
      `send-back, the inspection that sent back included; ${interval}.`,
    head: ['Crew', 'Site', 'Hours'],
    rows: results.rework
      .filter(({ hours }) => hours.mean > 0)
      .map((each) => [each.crew, each.site, short(each.hours)]),
  };
}
