import type { Plugin } from 'chart.js';
import { count, intervalName, number } from '../../../study/format.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { font } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { MUTED, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart, MARK_LEGEND } from '../chart.js';
import { onWhite } from '../marks.js';
import { intervalsByRate, pointsByRate, rateAxis } from './rate-marks.js';

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
  const shipped = (point: RatePoint) => point.shippedPerDay,
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
    legend: MARK_LEGEND,
    plugins: [intervalsByRate(results, 'y', shipped), askedAndCeiling(arithmetic)],
  });
}

/** The diagonal of as many as asked, and an upright line at the rate that arithmetic allows. */
function askedAndCeiling(arithmetic: RateResults['arithmetic']): Plugin {
  return drawing('asked and ceiling', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y'),
      { left, right, top, bottom, width, height } = chart.chartArea;
    context.beginPath();
    context.rect(left, top, width, height);
    context.clip();
    context.strokeStyle = MUTED;
    context.lineWidth = 1.4;
    context.setLineDash([7, 4]);
    polyline(
      context,
      [x.getPixelForValue(x.min), y.getPixelForValue(x.min)],
      [x.getPixelForValue(x.max), y.getPixelForValue(x.max)],
    );
    if (arithmetic === null) return;
    const at = x.getPixelForValue(arithmetic.perDay);
    context.setLineDash([2, 3]);
    polyline(context, [at, top], [at, bottom]);
    context.font = font(SIZE.small);
    context.textBaseline = 'middle';
    // At the right nothing is drawn so low: more is shipped there.
    const name = `${arithmetic.name} by arithmetic`,
      room = context.measureText(name).width,
      fits = at + 8 + room <= right;
    onWhite(context, name, fits ? at + 8 : at - 8 - room, bottom - 14, MUTED);
  });
}
