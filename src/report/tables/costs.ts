import { short } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import type { PageTable } from '../columns.js';
import { type Cell, money, type Valued, valued } from '../sheets/cells.js';

/** Said where a scenario has none. */
export const NO_PRICES = 'Cost: the scenario has no prices.';

/** Parts of the cost of a unit, their sum, and apart from them what rework costs. */
export function costs(results: Results, interval: string): PageTable {
  return {
    id: 'costs',
    title: 'Cost of a unit shipped',
    note:
      'Total cost over the time observed divided by the units shipped in it; people are paid for all ' +
      'their hours on shift. Rework is not an additional part: its labour, send-backs and scrap are ' +
      `included above; ${interval}.`,
    head: ['Part', `A unit, ${results.costs?.currency ?? ''}`, 'Share, %'],
    rows: results.costs === null ? [] : rows(results.costs),
  };
}

function rows(found: NonNullable<Results['costs']>): Cell[][] {
  const { parts, perUnit, rework } = found;
  return [
    ...parts.map((part) => [part.name, money(part.perUnit), shareOf(part.share)]),
    ['all', money(perUnit), shareOf(1)],
    [
      `of which rework (${short(rework.hoursPerUnit)} person-hours)`,
      money(rework.costPerUnit),
      shareOf(reworkShare(found)),
    ],
  ];
}

/** What rework costs, as a share of the cost of a unit, which it is within. */
export const reworkShare = ({ perUnit, rework }: NonNullable<Results['costs']>): number =>
  perUnit.mean > 0 ? rework.costPerUnit.mean / perUnit.mean : 0;

const shareOf = (share: number): Valued => valued(shareText(share), share, 'share');

/** A share of the cost in per cent, one digit after the point. */
export const shareText = (share: number): string => (share * 100).toFixed(1);
