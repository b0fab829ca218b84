import type { RateResults } from '../../../study/rate/results.js';
import { font } from '../../canvas.js';
import { count, intervalName, number } from '../../format.js';
import { MUTED, SIZE } from '../../style.js';
import { chart, valueAxis, type Chart } from '../chart.js';
import { drawing, onWhite } from '../marks.js';
import { intervalsByRate, LEGEND, pointsByRate, rateAxis } from './rate-marks.js';

/**
 * Units shipped a day against the rate asked: on the diagonal while the line keeps up, below the ceiling of
 * arithmetic.
 */
export function rateThroughput(results: RateResults): Chart {
  const {
    arithmetic,
    level,
    replications,
    mostReplications,
    answer: { highestPerDay, abovePerDay },
    grid,
  } = results;
  const shipped = (point: RateResults['points'][number]) => point.shippedPerDay,
    ceiling = arithmetic === null ? null : arithmetic.perDay;
  return chart({
    finding:
      (highestPerDay === null
        ? `No rate from ${grid.from} a day on holds`
        : abovePerDay === null
          ? `${highestPerDay} a day holds, the highest rate looked at`
          : `${highestPerDay} a day is the highest rate that holds`) +
      (ceiling === null ? '' : `; arithmetic allows ${number(ceiling)}`),
    how:
      `Units shipped a working day against the rate asked, mean with ${intervalName(level)} over ` +
      `${replications} to ${mostReplications} replications, ${count(results.window.weeks, 'week')} ` +
      `from ${results.window.from}. Dashed: as many as ` +
      `asked.${ceiling === null ? '' : ' Dotted: the ceiling by arithmetic.'}`,
    bodyHeight: 440,
    type: 'scatter',
    data: { datasets: pointsByRate(results, 'y', shipped) },
    scales: {
      x: rateAxis(results, ceiling),
      y: valueAxis('shipped, units a working day', { beginAtZero: false, grace: '12%' }),
    },
    legend: LEGEND,
    plugins: [
      intervalsByRate(results, 'y', shipped),
      drawing('asked and ceiling', (context, { scales, chartArea }) => {
        const x = scales['x'],
          y = scales['y'];
        if (x === undefined || y === undefined) return;
        context.beginPath();
        context.rect(chartArea.left, chartArea.top, chartArea.width, chartArea.height);
        context.clip();
        context.strokeStyle = MUTED;
        context.lineWidth = 1.4;
        context.setLineDash([7, 4]);
        context.beginPath();
        context.moveTo(x.getPixelForValue(x.min), y.getPixelForValue(x.min));
        context.lineTo(x.getPixelForValue(x.max), y.getPixelForValue(x.max));
        context.stroke();
        if (arithmetic === null) return;
        const at = x.getPixelForValue(arithmetic.perDay);
        context.setLineDash([2, 3]);
        context.beginPath();
        context.moveTo(at, chartArea.top);
        context.lineTo(at, chartArea.bottom);
        context.stroke();
        context.font = font(SIZE.small);
        context.textBaseline = 'middle';
        // At the right nothing is drawn so low: more is shipped there.
        const name = `${arithmetic.name} by arithmetic`,
          { width } = context.measureText(name),
          fits = at + 8 + width <= chartArea.right;
        onWhite(context, name, fits ? at + 8 : at - 8 - width, chartArea.bottom - 14, MUTED);
      }),
    ],
  });
}
