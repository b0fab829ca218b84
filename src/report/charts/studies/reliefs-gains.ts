import type { Plugin } from 'chart.js';
import type { ReliefResult, ReliefsResults } from '../../../study/reliefs/results.js';
import { intervalName, number, short, withInterval } from '../../format.js';
import { GRID, MUTED, PALETTE } from '../../style.js';
import { countedIn } from '../../terminal/reliefs.js';
import { chart, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { drawing, whiskers } from '../marks.js';
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

/** The best reliefs, each a dot with its interval. */
export function reliefGains(results: ReliefsResults): Chart | null {
  const { reliefs, eachLevel } = results,
    [best] = reliefs;
  if (best === undefined) return null;
  const rows: Row<ReliefResult>[] = reliefs
      .slice(0, TOP)
      .map((item) => ({ label: rowLabel(item.text), item })),
    ci = intervalName(eachLevel.reliefs);
  const columns = [
    column(['gain', `(${ci})`], rows, ({ gain }) => short(gain)),
    column(['replications'], rows, ({ replications }) => number(replications)),
  ];
  return chart({
    finding:
      (best.gain.low ?? 0) > 0
        ? `Best single relief: ${best.text}, ${withInterval(best.gain)} units a working day more`
        : `No single relief surely ships more than the base, ${withInterval(results.base.throughput)} ` +
          'units a working day',
    how:
      `Units a working day more than the base, ${countedIn(results)}, in pairs of replications ` +
      `with the same chance. Dot: mean; bar: ${ci}, so that those compared to the end hold ` +
      'together. Right of the line at 0: ships more.',
    bodyHeight: 64 + rows.length * (rowHeight(rows.length) + 4),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: ci,
          data: perRow(
            rows,
            ({ gain: { mean, low, high } }) => [low ?? mean, high ?? mean] as [number, number],
          ),
          backgroundColor: 'transparent',
          grouped: false,
        },
      ],
    },
    options: { indexAxis: 'y' },
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
    plugins: [whiskers(0), dots(rows.map(({ item }) => item!.gain.mean)), textColumns(columns)],
  });
}

/** A dot a row, over its interval. */
function dots(values: readonly number[]): Plugin {
  return drawing('dots', (context, { scales: { x, y } }) => {
    if (x === undefined || y === undefined) return;
    context.fillStyle = PALETTE.blue;
    values.forEach((value, row) => {
      context.beginPath();
      context.arc(x.getPixelForValue(value), y.getPixelForValue(row), 5, 0, 2 * Math.PI);
      context.fill();
    });
  });
}
