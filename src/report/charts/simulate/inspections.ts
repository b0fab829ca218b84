import type { Estimate, Results } from '../../../study/simulate/results.js';
import { intervalName, percentWithInterval, short } from '../../format.js';
import { PALETTE } from '../../style.js';
import { chart, intervalHead, intervalNote, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { whiskers } from '../marks.js';
import { column, columnsRoom, nameAxis, perRow, rowHeight, rowsBySite, textColumns } from '../rows.js';

/** First-time-through of every inspection, and what happens to the rest. */
export function firstTimeThrough(results: Results): Chart | null {
  const { inspections } = results;
  const first = inspections[0];
  if (first === undefined) return null;
  const rows = rowsBySite(inspections);
  const ci = intervalName(results.level);
  const head = intervalHead(results);
  const columns = [
    column(['first time', `through, % ${head}`], rows, (item) => short(item.ftt, 100)),
    column(['sent back', `per 100 ${head}`], rows, (item) => short(item.sentBackPer100)),
    column(['repaired', `per 100 ${head}`], rows, (item) => short(item.repairedPer100)),
  ];
  const lowest = inspections.reduce((least, item) => (item.ftt.mean < least.ftt.mean ? item : least), first);
  const yieldText =
    results.rty === null ? '' : `; over the whole route (RTY) ${percentWithInterval(results.rty)}`;
  return chart({
    finding: `Fewest right first time: ${lowest.name}, ${percentWithInterval(lowest.ftt)}${yieldText}`,
    how:
      'First-time-through by inspection: right first time over inspected, first visits only. Bars ' +
      `with ${intervalNote(results)}; send-backs and repairs per 100 inspections.`,
    bodyHeight: 64 + rows.length * (rowHeight(rows.length) + 2),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: 'first-time-through, %',
          data: perRow(rows, (item) => item.ftt.mean * 100),
          backgroundColor: PALETTE.blue,
          grouped: false,
          barPercentage: 0.7,
          categoryPercentage: 1,
        },
        {
          label: ci,
          data: perRow(rows, (item) => span(item.ftt)),
          backgroundColor: 'transparent',
          grouped: false,
        },
      ],
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis('first-time-through, %', { position: 'top', max: 100 }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [whiskers(1), textColumns(columns)],
  });
}

function span(share: Estimate): [number, number] | null {
  return share.low === null || share.high === null ? null : [share.low * 100, share.high * 100];
}
