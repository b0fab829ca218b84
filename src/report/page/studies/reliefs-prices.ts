import { count, exact, number } from '../../../study/format.js';
import { each } from '../../../study/planners-unit.js';
import type { ReliefResult, ReliefsResults } from '../../../study/reliefs/results.js';
import { surelyGains } from '../../../study/reliefs/runs.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { onEveryShift } from '../../constraint.js';
import { roughRange } from '../../first/lines/offer.js';
import { type Cell, counted, estimateParts, valued } from '../../sheets/cells.js';

/** Whether the scenario names any changes. */
export const hasPrices = ({ reliefs }: ReliefsResults): boolean =>
  reliefs.some(({ offer }) => offer !== undefined);

const amount = (value: number | null | undefined, text: (value: number) => string = exact): Cell =>
  value == null ? 'not given' : valued(text(value), value, 'money');

/** Columns of the table of all reliefs; none where the scenario names no changes. */
export const priceColumns = (results: ReliefsResults): Column<ReliefResult>[] =>
  hasPrices(results)
    ? [
        ['Price', ({ offer }) => (offer === null ? '' : amount(offer?.price))],
        ['Rank by price', ({ rankPerPrice }) => (rankPerPrice == null ? '' : counted(rankPerPrice))],
      ]
    : [];

/** The changes that the scenario names: what each costs, when it is there, what a unit gained costs by it. */
export function pricesTable(results: ReliefsResults): PageTable {
  const { base, reliefs, rateUnit } = results,
    named = reliefs
      .filter(({ offer }) => offer != null)
      .sort((a, b) => (a.rankPerPrice ?? Infinity) - (b.rankPerPrice ?? Infinity) || a.rank - b.rank),
    currency = base.currency ?? '';
  return {
    id: 'prices',
    title: 'Prices of change',
    note:
      `${currency}, once; a day as long as it stands, which is in the change of the cost of a unit. For ` +
      `each unit ${each(rateUnit)}: the price over the gain, of those that surely gain; the least first. ` +
      `${unpricedText(results)} What needs others that were not made with it has no rank. Wages and floor ` +
      'are in the cost of a unit, not here.',
    ...columns(named, [
      ['Change', ({ text }) => onEveryShift(text)],
      ['Rank by price', ({ rankPerPrice }) => (rankPerPrice == null ? '' : counted(rankPerPrice))],
      ['Price', ({ offer }) => amount(offer?.price)],
      ['Ready after', ({ offer }) => offer?.readyAfter ?? 'at once'],
      [
        `For each unit ${each(rateUnit)}`,
        ({ pricePerGain }) =>
          pricePerGain == null
            ? ''
            : { text: roughRange(pricePerGain), parts: estimateParts(pricePerGain, 'money') },
      ],
      ['Gain', 'gain'],
      [
        'Price a unit built',
        ({ offer }) => (offer?.pricePerUnit == null ? '' : amount(offer.pricePerUnit, number)),
      ],
      ['A day', ({ offer }) => amount(offer?.day)],
      ['At most', ({ offer }) => (offer?.atMost == null ? '' : counted(offer.atMost))],
      ['Not without', ({ offer }) => offer?.needs.join(', ') ?? ''],
      ['In the scenario', ({ offer }) => offer?.names.join(' + ') ?? ''],
    ]),
  };
}

/** How many that surely bring units cannot be ranked. */
function unpricedText({ reliefs }: ReliefsResults): string {
  const sure = reliefs.filter(({ gain }) => surelyGains(gain)),
    unpriced = sure.filter(({ offer }) => offer?.price == null).length;
  return unpriced === 0
    ? 'All changes that surely gain have a price.'
    : `${exact(unpriced)} of ${count(sure.length, 'change')} that surely gain have no price, and no rank.`;
}
