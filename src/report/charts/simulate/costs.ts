import type { Estimate, Results } from '../../../study/simulate/results.js';
import { intervalName, number, short, withInterval } from '../../format.js';
import { MUTED, PALETTE, SIZE } from '../../style.js';
import { chart, intervalHead, intervalNote, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { whiskers } from '../marks.js';
import {
  column,
  columnsRoom,
  nameAxis,
  perRow,
  rowHeight,
  rowLabel,
  textColumns,
  type Row,
} from '../rows.js';

interface Bar {
  readonly perUnit: Estimate;
  readonly share: number;
  readonly colour: string;
}

/** The cost of a unit by part, the greatest first, and below it what rework costs, which is in the parts. */
export function costPerUnit(results: Results): Chart | null {
  const { costs } = results;
  if (costs === null || costs.perUnit.mean === 0) return null;
  const { currency, perUnit, rework } = costs,
    parts = costs.parts
      .filter((part) => part.perUnit.mean > 0)
      .sort((a, b) => b.perUnit.mean - a.perUnit.mean);
  const most = parts[0]!;
  const rows: Row<Bar>[] = [
    { label: rowLabel('parts', '600'), item: null },
    ...parts.map((part) => ({ label: rowLabel(part.name), item: { ...part, colour: PALETTE.blue } })),
    { label: rowLabel('within these parts', '600'), item: null },
    {
      label: rowLabel('rework'),
      item: {
        perUnit: rework.costPerUnit,
        share: rework.costPerUnit.mean / perUnit.mean,
        colour: PALETTE.vermillion,
      },
    },
  ];
  const head = intervalHead(results);
  const columns = [
    column([`a unit, ${currency}`, head], rows, (item) => short(item.perUnit)),
    column(['share, %'], rows, (item) => percent(item.share)),
  ];
  return chart({
    finding:
      `A unit shipped costs ${withInterval(perUnit, currency)}, ` +
      `${number(Math.round(most.share * 100))} % of it for ${most.name}; rework costs ` +
      `${withInterval(rework.costPerUnit)} of it`,
    how:
      `Money for the time observed over units shipped in it, by part. Rework: people's hours in ` +
      'work done again and repairs, send-backs and scrap; they are in the parts above. Bars with ' +
      `${intervalNote(results)}.`,
    bodyHeight: 64 + rows.length * (rowHeight(rows.length) + 4),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: `a unit, ${currency}`,
          data: perRow(rows, (item) => item.perUnit.mean),
          backgroundColor: perRow(rows, (item) => item.colour).map((colour) => colour ?? 'transparent'),
          grouped: false,
          barPercentage: 0.7,
          categoryPercentage: 1,
        },
        {
          label: intervalName(results.level),
          data: perRow(rows, (item) => span(item.perUnit)),
          backgroundColor: 'transparent',
          grouped: false,
        },
      ],
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis(`${currency} a unit shipped`, { position: 'top', ticks: TICKS }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [whiskers(1), textColumns(columns)],
  });
}

/** Amounts as in the text, without marks between thousands. */
const TICKS = {
  color: MUTED,
  padding: 6,
  font: { size: SIZE.small },
  callback: (value: number) => String(value),
};

const percent = (share: number): string => (share * 100).toFixed(1);
const span = ({ low, high }: Estimate): [number, number] | null =>
  low === null || high === null ? null : [low, high];
