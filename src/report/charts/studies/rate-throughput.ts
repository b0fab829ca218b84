import { count, exact, number } from '../../../study/format.js';
import { eachWorking, inUnit, rateText, unitsEach } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { mapped } from '../../../study/statistics/estimate.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { MUTED, PALETTE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart, intervalWords, MARK_LEGEND } from '../chart.js';
import { uprightLines } from '../upright-lines.js';
import { intervalsByRate, pointsByRate, rateAxis } from './rate-marks.js';

/**
 * Units shipped a day against the rate asked: on the diagonal while the line keeps up, beside the plan's
 * rate and what averages allow.
 */
export function rateThroughput(results: RateResults): Chart {
  const {
    arithmetic,
    level,
    mostReplications,
    answer: { highestPerDay, abovePerDay },
    grid,
    rateUnit,
  } = results;
  const rate = (perDay: number): string => rateText(perDay, rateUnit),
    shipped = (point: RatePoint) => mapped(point.shippedPerDay, (perDay) => perDay * rateUnit.workingDays),
    ceiling = arithmetic === null ? null : inUnit(arithmetic.perDay, rateUnit);
  const planned = inUnit(results.plannedPerDay, rateUnit);
  return chart({
    finding:
      (highestPerDay === null
        ? `No rate from ${rate(grid.from)} on holds`
        : abovePerDay === null
          ? `${rate(highestPerDay)} holds, the highest rate looked at`
          : `${rate(highestPerDay)} is the highest rate that holds`) +
      `; the plan asks for ${exact(planned)}`,
    how:
      `Units shipped ${eachWorking(rateUnit)} against the rate asked, with the ` +
      `${intervalWords(level)} of the mean, up to ${count(mostReplications, 'build')}. ` +
      'Slanted: as many as asked. The scale does not begin at 0.',
    bodyHeight: 440,
    type: 'scatter',
    data: { datasets: pointsByRate(results, 'y', shipped) },
    scales: {
      x: rateAxis(results, Math.max(planned, ceiling ?? 0)),
      y: valueAxis(`shipped, ${unitsEach(rateUnit)}`, { beginAtZero: false, grace: '18%' }),
    },
    legend: MARK_LEGEND,
    plugins: [
      intervalsByRate(results, 'y', shipped),
      AS_ASKED,
      uprightLines([
        { name: `plan: ${exact(planned)}`, at: planned, colour: PALETTE.vermillion, dash: [] },
        ...(arithmetic === null || ceiling === null
          ? []
          : [
              {
                name: `averages allow ${number(ceiling)}: ${arithmetic.name}`,
                at: ceiling,
                colour: MUTED,
                dash: [2, 3],
              },
            ]),
      ]),
    ],
  });
}

/** The diagonal of as many as asked. */
const AS_ASKED = drawing(
  'as asked',
  (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y'),
      { left, top, width, height } = chart.chartArea;
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
  },
  'beforeDatasetsDraw',
);
