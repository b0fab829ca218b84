import type { BufferResults } from '../../../study/buffers/results.js';
import { count, intervalName, number, withInterval } from '../../../study/format.js';
import { faded, MUTED, PALETTE, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band, line } from '../datasets.js';

/**
 * Throughput against waiting places: the best layout found for each number of them; null with fewer than two
 * points.
 */
export function placesCurve({
  curve,
  chosen,
  unit,
  level,
  replications,
  enough,
  zone,
  goal,
}: BufferResults): Chart | null {
  if (curve.length < 2) return null;
  const point = (value: (each: BufferResults['curve'][number]) => number | null) =>
    curve.map((each) => ({ x: each.total, y: value(each) ?? NaN }));
  return chart({
    finding:
      enough === null
        ? `${count(chosen.total, 'place')} give ${withInterval(chosen.rate, unit)}`
        : (enough === 0
            ? 'No place at all comes'
            : `${enough} of ${count(chosen.total, 'place')} already come`) +
          ` within ${number(100 * zone)} % of what ${chosen.total} give`,
    how:
      `Best layout found for each number of waiting places, ${unit}; band: ${intervalName(level)} ` +
      `over ${count(replications, 'replication')} of the search. The values of the search are a ` +
      'little high, since its luckiest layouts are taken.' +
      (goal.kind === 'target' ? ' Dashed: the target.' : ''),
    bodyHeight: 420,
    type: 'line',
    data: {
      datasets: [
        ...band(
          ['low', point(({ rate }) => rate.low)],
          ['high', point(({ rate }) => rate.high)],
          faded(PALETTE.blue, 0.2),
        ),
        line(
          'best found',
          point(({ rate }) => rate.mean),
          PALETTE.blue,
          2.5,
          {
            pointRadius: 3.5,
            pointBackgroundColor: PALETTE.blue,
          },
        ),
        ...(goal.kind === 'target'
          ? [
              line(
                'target',
                point(() => goal.rate),
                PALETTE.vermillion,
                2,
                { borderDash: [8, 3] },
              ),
            ]
          : []),
      ],
    },
    scales: {
      x: {
        type: 'linear',
        title: { display: true, text: 'waiting places in all', color: MUTED, font: { size: SIZE.small } },
        grid: { display: false },
        ticks: { precision: 0, color: MUTED, font: { size: SIZE.small } },
      },
      y: valueAxis(unit, { grace: '5%' }),
    },
  });
}
