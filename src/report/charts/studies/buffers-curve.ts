import type { BufferResults, CurvePoint } from '../../../study/buffers/results.js';
import { count, number } from '../../../study/format.js';
import { faded, MUTED, PALETTE, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart, intervalNote, intervalWords } from '../chart.js';
import { band, line } from '../datasets.js';
import { toldOf } from '../figures.js';
import { uprightLines } from '../upright-lines.js';

/** Layouts further below the best are not drawn: the others would lie on one line. */
const FAR_BELOW = 0.2;
const ZONE_FILL = '#dcdcdc';

/**
 * Throughput against waiting places: the best layout found for each number of them, and the number that is
 * enough; null with fewer than two points, and for several cases: it is that of the scenario as it is.
 */
export function placesCurve(results: BufferResults): Chart | null {
  const { curve, chosen, best, unit, level, replications, zone, goal } = results,
    shown = curve.filter(({ behind }) => behind <= FAR_BELOW);
  if (shown.length < 2 || results.cases !== undefined) return null;
  const point = (value: (each: CurvePoint) => number | null) =>
    shown.map((each) => ({ x: each.total, y: value(each) ?? NaN }));
  const highest = Math.max(...shown.map(({ rate }) => rate.mean)),
    matters = `${number(100 * zone)} %`;
  return chart({
    finding: finding(results),
    how:
      `Best layout found for each number of places, with the ${intervalNote({ level, replications })}. ` +
      (best === null ? 'Dashed: the target.' : `Grey: within ${matters} of the best.`) +
      ' The scale does not begin at 0' +
      (shown.length < curve.length ? '; layouts more than 20 % below the best are left out.' : '.'),
    bodyHeight: 420,
    type: 'line',
    data: {
      labels: shown.map(({ total }) => count(total, 'place')),
      datasets: [
        // What comes first is drawn on top.
        line(
          'best found',
          point(({ rate }) => rate.mean),
          PALETTE.blue,
          2.5,
          {
            pointRadius: shown.map(({ total }) => (total === chosen.total ? 6.5 : 3.5)),
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
        ...band(
          [`best found, ${intervalWords(level)} low`, point(({ rate }) => rate.low)],
          [`best found, ${intervalWords(level)} high`, point(({ rate }) => rate.high)],
          faded(PALETTE.blue, 0.2),
        ),
        ...(best === null
          ? []
          : band(['', point(() => (1 - zone) * highest)], ['', point(() => highest)], ZONE_FILL)),
      ],
    },
    scales: {
      x: {
        type: 'linear',
        title: { display: true, text: 'waiting places in all', color: MUTED, font: { size: SIZE.small } },
        grid: { display: false },
        ticks: { precision: 0, color: MUTED, font: { size: SIZE.small } },
      },
      y: valueAxis(unit, { beginAtZero: false, grace: '8%' }),
    },
    plugins: [
      uprightLines([
        { name: `chosen: ${chosen.total}`, at: chosen.total, colour: PALETTE.vermillion, dash: [2, 3] },
      ]),
    ],
  });
}

function finding({ chosen, best, more, unit, zone }: BufferResults): string {
  const matters = `${number(100 * zone)} %`;
  if (best === null || more === null)
    return `${count(chosen.total, 'place')} give ${toldOf(chosen.rate, unit)}`;
  return (
    `${count(chosen.total, 'place')} ${chosen.total === 1 ? 'comes' : 'come'} within ${matters} of what ` +
    `${best.total} give`
  );
}
