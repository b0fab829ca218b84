import type { Plugin } from 'chart.js';
import { count, exact, intervalName, number } from '../../../study/format.js';
import { eachWorking, inUnit, rateText, unitsEach } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { mapped } from '../../../study/statistics/estimate.js';
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
    rateUnit,
  } = results;
  const rate = (perDay: number): string => rateText(perDay, rateUnit),
    shipped = (point: RatePoint) => mapped(point.shippedPerDay, (perDay) => perDay * rateUnit.workingDays),
    ceiling = arithmetic === null ? null : inUnit(arithmetic.perDay, rateUnit);
  return chart({
    finding:
      (highestPerDay === null
        ? `No rate from ${rate(grid.from)} on holds`
        : abovePerDay === null
          ? `${rate(highestPerDay)} holds, the highest rate looked at`
          : `${rate(highestPerDay)} is the highest rate that holds`) +
      (ceiling === null ? '' : `; arithmetic allows ${number(ceiling)}`),
    how:
      `Units shipped ${eachWorking(rateUnit)} against the rate asked, mean with ${intervalName(level)} ` +
      `over ${exact(replications)} to ${count(mostReplications, 'replication')}, ` +
      `${count(results.window.weeks, 'week')} from ${results.window.from}. Dashed: as many as ` +
      `asked.${ceiling === null ? '' : ' Dotted: the ceiling by arithmetic.'}`,
    bodyHeight: 440,
    type: 'scatter',
    data: { datasets: pointsByRate(results, 'y', shipped) },
    scales: {
      x: rateAxis(results, ceiling),
      y: valueAxis(`shipped, ${unitsEach(rateUnit)}`, { beginAtZero: false, grace: '12%' }),
    },
    legend: MARK_LEGEND,
    plugins: [intervalsByRate(results, 'y', shipped), askedAndCeiling(arithmetic?.name ?? '', ceiling)],
  });
}

/** The diagonal of as many as asked, and an upright line at the rate that arithmetic allows. */
function askedAndCeiling(limit: string, ceiling: number | null): Plugin {
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
    if (ceiling === null) return;
    const at = x.getPixelForValue(ceiling);
    context.setLineDash([2, 3]);
    polyline(context, [at, top], [at, bottom]);
    context.font = font(SIZE.small);
    context.textBaseline = 'middle';
    // At the right nothing is drawn so low: more is shipped there.
    const name = `${limit} by arithmetic`,
      room = context.measureText(name).width,
      fits = at + 8 + room <= right;
    onWhite(context, name, fits ? at + 8 : at - 8 - room, bottom - 14, MUTED);
  });
}
