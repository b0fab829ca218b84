import type { BufferResults } from '../../../study/buffers/results.js';
import { withInterval } from '../../../study/format.js';
import { PALETTE } from '../../style.js';
import { TICKS, valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { perRow, rowChart, rowsOf } from '../row-chart.js';

const BAR_ROW = 34;

/** Places of each spot in the chosen layout, beside those that it has now. */
export function placesLayout({ spots, chosen, present, unit }: BufferResults): Chart {
  const rows = rowsOf(spots, ({ name }) => name);
  const moved = spots.filter((spot) => spot.chosen !== spot.present).length;
  return rowChart({
    finding:
      moved === 0
        ? `The layout as it is stays the best found, ${withInterval(chosen.rate, unit)}`
        : `${moved} of ${spots.length} spots change: ${chosen.total} places in all, ` +
          `${present.total} as it is`,
    how: 'Waiting places of each buffer and bank: grey as it is, blue in the chosen layout.',
    each: BAR_ROW,
    rows,
    columns: [
      [['as it is'], (spot) => String(spot.present)],
      [['chosen'], (spot) => String(spot.chosen)],
    ],
    values: valueAxis('waiting places', { ticks: { ...TICKS, precision: 0 } }),
    datasets: [
      { label: 'as it is', data: perRow(rows, (spot) => spot.present), backgroundColor: '#b8b8b8' },
      { label: 'chosen', data: perRow(rows, (spot) => spot.chosen), backgroundColor: PALETTE.blue },
    ],
  });
}
