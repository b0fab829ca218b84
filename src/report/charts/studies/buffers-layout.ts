import type { BufferResults } from '../../../study/buffers/results.js';
import { withInterval } from '../../format.js';
import { MUTED, PALETTE, SIZE } from '../../style.js';
import { chart, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { column, columnsRoom, nameAxis, perRow, rowLabel, textColumns } from '../rows.js';

const BAR_ROW = 34;

/** Places of each spot in the chosen layout, beside those that it has now. */
export function placesLayout({ spots, chosen, present, unit }: BufferResults): Chart {
  const rows = spots.map((spot) => ({ label: rowLabel(spot.name), item: spot }));
  const columns = [
    column(['as it is'], rows, (spot) => String(spot.present)),
    column(['chosen'], rows, (spot) => String(spot.chosen)),
  ];
  const moved = spots.filter((spot) => spot.chosen !== spot.present).length;
  return chart({
    finding:
      moved === 0
        ? `The layout as it is stays the best found, ${withInterval(chosen.rate, unit)}`
        : `${moved} of ${spots.length} spots change: ${chosen.total} places in all, ${present.total} as it is`,
    how: 'Waiting places of each buffer and bank: grey as it is, blue in the chosen layout.',
    bodyHeight: 64 + rows.length * BAR_ROW,
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        { label: 'as it is', data: perRow(rows, (spot) => spot.present), backgroundColor: '#b8b8b8' },
        { label: 'chosen', data: perRow(rows, (spot) => spot.chosen), backgroundColor: PALETTE.blue },
      ],
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis('waiting places', {
        position: 'top',
        ticks: { precision: 0, color: MUTED, padding: 6, font: { size: SIZE.small } },
      }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [textColumns(columns)],
  });
}
