import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { PALETTE } from '../../style.js';
import { reworkShare, shareText } from '../../tables/costs.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote, intervalWords } from '../chart.js';
import { bars } from '../datasets.js';
import { figures, told } from '../figures.js';
import { heading, perRow, type Row, rowChart, span } from '../row-chart.js';

interface Bar {
  readonly perUnit: Estimate;
  readonly share: number;
  readonly colour: string;
}

/** The cost of a unit by part, the greatest first, and below it what rework costs, which is in the parts. */
export function costPerUnit(results: Results): Chart | null {
  const { costs } = results;
  if (costs === null) return null;
  const { currency, perUnit, rework } = costs,
    parts = costs.parts
      .filter((part) => part.perUnit.mean > 0)
      .sort((a, b) => b.perUnit.mean - a.perUnit.mean);
  const [most] = parts;
  if (most === undefined || perUnit.mean === 0) return null;
  const rows: Row<Bar>[] = [
    heading('parts'),
    ...parts.map((part) => ({ label: part.name, item: { ...part, colour: PALETTE.blue } })),
    heading('within these parts'),
    {
      label: 'rework',
      item: {
        perUnit: rework.costPerUnit,
        share: reworkShare(costs),
        colour: PALETTE.vermillion,
      },
    },
  ];
  const head = intervalHead(results),
    money = figures(parts.map((part) => part.perUnit));
  return rowChart({
    finding:
      `A unit costs ${told(perUnit)} ${currency}: ${Math.round(most.share * 100)} % is for ${most.name}, ` +
      `${told(rework.costPerUnit)} ${currency} for rework`,
    how:
      `Money over units shipped, with the ${intervalNote(results)}. Rework: work done again, repairs, ` +
      'send-backs and scrap, which are in the parts above.',
    rows,
    columns: [
      [[`a unit, ${currency}`, head], (item) => money.short(item.perUnit)],
      [['share, %'], (item) => shareText(item.share)],
    ],
    values: valueAxis(`${currency} a unit shipped`),
    datasets: [
      bars(
        perRow(rows, (item) => item.perUnit.mean),
        { colour: perRow(rows, (item) => item.colour).map((colour) => colour ?? 'transparent') },
      ),
    ],
    intervals: {
      of: `${currency} a unit`,
      sure: intervalWords(results.level),
      ends: (item) => span(item.perUnit),
    },
  });
}
