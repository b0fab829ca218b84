import type { VariedAssumption, ReliefsResults } from '../../../study/reliefs/results.js';
import { intervalName, number, short } from '../../format.js';
import { DARK_EDGE, GRID, MUTED, PALETTE } from '../../style.js';
import { chart, roomAtRight, valueAxis, type Chart } from '../chart.js';
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

const TOP = 20;

/** Guesses and estimates by what they move, low and high, the greatest first. */
export function reliefTornado({ assumptions, eachLevel }: ReliefsResults): Chart | null {
  const [first] = assumptions;
  if (first === undefined) return null;
  const rows: Row<VariedAssumption>[] = assumptions
      .slice(0, TOP)
      .map((item) => ({ label: rowLabel(item.path), item })),
    ci = intervalName(eachLevel.assumptions);
  const cell = (each: VariedAssumption['low']): string => (each === null ? 'cannot be' : short(each.gain));
  const columns = [
    column(['low', `(${ci})`], rows, ({ low }) => cell(low)),
    column(['high', `(${ci})`], rows, ({ high }) => cell(high)),
  ];
  const bars = (side: 'low' | 'high') => perRow(rows, (each) => each[side]?.gain.mean ?? null);
  return chart({
    finding:
      `Measure next: ${first.path}, a ${first.basis} that moves throughput by up to ` +
      `${number(first.largest)} units a working day`,
    how:
      'Units a working day more or less than the base where one guess is 20 % lower or higher, one ' +
      'estimate 10 %, a whole number 1 at least; the others stay. Orange: low end; blue: high end. ' +
      'Intervals stand at the right.',
    bodyHeight: 90 + rows.length * (rowHeight(rows.length) + 10),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: 'low end',
          data: bars('low'),
          backgroundColor: PALETTE.orange,
          borderColor: DARK_EDGE,
          borderWidth: 1,
          barPercentage: 0.9,
          categoryPercentage: 0.8,
        },
        {
          label: 'high end',
          data: bars('high'),
          backgroundColor: PALETTE.blue,
          barPercentage: 0.9,
          categoryPercentage: 0.8,
        },
      ],
    },
    options: { indexAxis: 'y' },
    legend: { display: true, position: 'bottom' },
    scales: {
      x: valueAxis('gain, units a working day', {
        position: 'top',
        grid: {
          color: ({ tick }: { tick: { value: number } }) => (tick.value === 0 ? MUTED : GRID),
          drawTicks: false,
        },
      }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [textColumns(columns)],
  });
}
