import type { Plugin } from 'chart.js';
import { exact, number } from '../../../study/format.js';
import { eachWorking, inUnit, rateText, unitsEach } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { mapped } from '../../../study/statistics/estimate.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { MUTED, PALETTE } from '../../style.js';
import { TICKS, valueAxis } from '../axes.js';
import { type Chart, chart, intervalWords, MARK_LEGEND } from '../chart.js';
import { ROW, topWithNames, uprightLines } from '../upright-lines.js';
import { intervalsByRate, pointsByRate, rateAxis } from './rate-marks.js';
import { buildsOf, rateScale } from './rate-scale.js';

/** Of plot and axis, with what a legend takes of it, CSS pixels. */
const BODY_HEIGHT = 440,
  LEGEND = 40;

/**
 * Units shipped a day against the rate asked: on the diagonal while the line keeps up, beside the plan's
 * rate and what averages allow.
 */
export function rateThroughput(results: RateResults): Chart {
  const {
    arithmetic,
    level,
    points,
    answer: { highestPerDay, abovePerDay },
    grid,
    rateUnit,
  } = results;
  const rate = (perDay: number): string => rateText(perDay, rateUnit),
    shipped = (point: RatePoint) => mapped(point.shippedPerDay, (perDay) => perDay * rateUnit.workingDays),
    ceiling = arithmetic === null ? null : inUnit(arithmetic.perDay, rateUnit);
  const planned = inUnit(results.plannedPerDay, rateUnit),
    lines = arithmetic === null ? 1 : 2,
    scale = rateScale(results, shipped),
    low = Math.max(0, scale.low - 0.06 * (scale.high - scale.low)),
    // The highest mark is half in the row above its middle.
    high = topWithNames(scale.high, lines + 0.5, BODY_HEIGHT - LEGEND, low);
  return chart({
    finding:
      (highestPerDay === null
        ? `No rate from ${rate(grid.from)} on holds`
        : abovePerDay === null
          ? `${rate(highestPerDay)} holds, the highest rate looked at`
          : `${rate(highestPerDay)} is the highest rate that holds`) +
      `; the plan asks for ${exact(planned)}`,
    how:
      `Units shipped ${eachWorking(rateUnit)} against the rate asked, ${buildsOf(points)} a rate. ` +
      `Bars: ${intervalWords(level)} of the mean. ${scale.words} ` +
      `Slanted: as many as asked.${low > 0 ? ' The scale does not begin at 0.' : ''}`,
    bodyHeight: BODY_HEIGHT,
    type: 'scatter',
    data: { datasets: pointsByRate(results, 'y', shipped) },
    scales: {
      x: rateAxis(results, Math.max(planned, ceiling ?? 0)),
      y: valueAxis(`shipped, ${unitsEach(rateUnit)}`, {
        beginAtZero: false,
        min: low,
        max: high,
        ticks: { ...TICKS, includeBounds: false },
      }),
    },
    legend: MARK_LEGEND,
    plugins: [
      ...intervalsByRate(results, 'y', shipped, scale),
      asAsked(lines),
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

/** The diagonal of as many as asked, below the names of so many lines. */
const asAsked = (lines: number): Plugin =>
  drawing(
    'as asked',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        y = axisOf(chart, 'y'),
        { left, top, width, height } = chart.chartArea;
      context.beginPath();
      context.rect(left, top + ROW * lines, width, height - ROW * lines);
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
