import { count, exact, mean, number, short } from '../../study/format.js';
import { each, unitsEach } from '../../study/planners-unit.js';
import type { ReliefResult, ReliefsResults, VariedResult } from '../../study/reliefs/results.js';
import { triedIn } from '../../study/reliefs/sentence.js';
import { roughMoney } from '../first/lines/offer.js';
import { reliefsFirst } from '../first/reliefs.js';
import { countedIn, leftText, savedText } from '../reliefs.js';
import { firstPieces } from './first.js';
import { joined } from './lines.js';
import { type CellColumn, tableOf } from './table.js';

const TOP = 12,
  TOP_ASSUMPTIONS = 8;

/**
 * The ranking in short, plain text of at most `width` columns: the answer, the best reliefs, the
 * assumptions that move most.
 */
export function reliefsTable(results: ReliefsResults, width?: number): string {
  const { reliefs, assumptions, base, answer, seed, skipped, rateUnit, level } = results,
    left = leftText(results);
  return joined(
    [
      ...firstPieces(reliefsFirst(results), answer.sentence),
      `base ${short(base.throughput)} ${unitsEach(rateUnit)}, ${countedIn(results)}, seed ${seed}`,
      '',
      tableOf(reliefs.slice(0, TOP), columns(results)),
      ...(triedIn(results) > TOP ? [`and ${triedIn(results) - TOP} more, with --json or --out`] : []),
      ...(assumptions.length === 0
        ? []
        : [
            '',
            tableOf(assumptions.slice(0, TOP_ASSUMPTIONS), [
              { head: 'measure next', cell: 'words' },
              { head: `low: gain ${each(rateUnit)}`, cell: ({ low }) => gainAt(low) },
              { head: `high: gain ${each(rateUnit)}`, cell: ({ high }) => gainAt(high) },
            ]),
          ]),
      '',
      `gain: ${unitsEach(rateUnit)} more than the base, same chance in both; all that is in brackets holds ` +
        `together, ${number(100 * level)} %`,
      savedText(results),
      ...(left === null ? [] : [left]),
      ...(skipped.length === 0
        ? []
        : [`${count(skipped.length, 'change')} could not be made; --json says which and why`]),
    ],
    width,
  );
}

/** Costs have columns where the scenario has prices, prices of change where it names changes. */
function columns({ base, rateUnit: unit, reliefs }: ReliefsResults): CellColumn<ReliefResult>[] {
  const { costPerUnit, currency } = base,
    money = currency ?? '';
  const costs: CellColumn<ReliefResult>[] = [
    {
      head: `${money} a unit`,
      align: 'right',
      cell: ({ costPerUnit: cost }) => (cost === null ? '' : mean(cost)),
    },
    { head: 'by cost', align: 'right', cell: 'rankPerCost' },
  ];
  const prices: CellColumn<ReliefResult>[] = [
    { head: 'price', align: 'right', cell: ({ offer }) => (offer?.price == null ? '' : exact(offer.price)) },
    {
      head: `${money} for 1 ${each(unit)}`,
      align: 'right',
      cell: ({ pricePerGain }) => (pricePerGain == null ? '' : roughMoney(pricePerGain.mean)),
    },
    { head: 'by price', align: 'right', cell: ({ rankPerPrice }) => String(rankPerPrice ?? '') },
  ];
  return [
    { head: '', align: 'right', cell: 'rank' },
    { head: 'relief', cell: 'text' },
    { head: `gain ${each(unit)}`, cell: ({ gain }) => short(gain) },
    {
      head: 'builds',
      align: 'right',
      cell: ({ replications, isFresh }) => `${isFresh ? 'fresh ' : ''}${exact(replications)}`,
    },
    ...(costPerUnit === null ? [] : costs),
    ...(reliefs.some(({ offer }) => offer != null) ? prices : []),
  ];
}

const gainAt = (end: VariedResult | null): string => (end === null ? 'cannot be' : short(end.gain));
