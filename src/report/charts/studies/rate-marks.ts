import type { ChartDataset, Plugin } from 'chart.js';
import { inUnit, unitsEach } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults, RateVerdict } from '../../../study/rate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { axisOf, drawing } from '../../drawing.js';
import { INK, PALETTE } from '../../style.js';
import { type Axis, TICKS, valueAxis } from '../axes.js';
import { uprightInterval } from '../marks.js';

/** Verdicts by colour and by shape: a full disc, a cross, an open triangle. */
export const VERDICT_MARKS: Readonly<
  Record<
    RateVerdict,
    { readonly colour: string; readonly fill: string; readonly shape: 'circle' | 'crossRot' | 'triangle' }
  >
> = {
  holds: { colour: PALETTE.blue, fill: PALETTE.blue, shape: 'circle' },
  'does not hold': { colour: PALETTE.vermillion, fill: PALETTE.vermillion, shape: 'crossRot' },
  'not settled': { colour: INK, fill: '#ffffff', shape: 'triangle' },
};
const VERDICTS = Object.keys(VERDICT_MARKS) as RateVerdict[];

/** The means of a figure by rate as points, one dataset a verdict, with a thin line through all of them. */
export function pointsByRate(
  { points, rateUnit }: RateResults,
  axis: string,
  of: (point: RatePoint) => Estimate,
): ChartDataset<'scatter'>[] {
  const at = (point: RatePoint) => ({ x: inUnit(point.perDay, rateUnit), y: of(point).mean });
  return [
    ...VERDICTS.map((verdict) => {
      const { colour, fill, shape } = VERDICT_MARKS[verdict];
      return {
        type: 'scatter' as const,
        yAxisID: axis,
        label: verdict,
        data: points.filter((point) => point.verdict === verdict).map(at),
        pointStyle: shape,
        pointRadius: 6,
        borderWidth: 2,
        borderColor: colour,
        backgroundColor: fill,
        pointBorderColor: colour,
        pointBackgroundColor: fill,
      };
    }),
    {
      type: 'scatter' as const,
      yAxisID: axis,
      label: '',
      data: points.map(at),
      showLine: true,
      pointRadius: 0,
      borderColor: '#8a8a8a',
      borderWidth: 1,
    },
  ];
}

/** Intervals of the same figure as upright bars behind the points. */
export function intervalsByRate(
  { points, rateUnit }: RateResults,
  axis: string,
  of: (point: RatePoint) => Estimate,
): Plugin {
  return drawing(`intervals ${axis}`, (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, axis);
    context.strokeStyle = INK;
    context.lineWidth = 1.4;
    for (const point of points) {
      const { low, high } = of(point),
        at = x.getPixelForValue(inUnit(point.perDay, rateUnit));
      if (low === null || high === null) continue;
      uprightInterval(context, y.getPixelForValue(low), y.getPixelForValue(high), at);
    }
  });
}

/**
 * The axis of rates in the planner's unit, a little wider than what was looked at, and `more` where something
 * else stands on it.
 */
export function rateAxis({ grid, rateUnit }: RateResults, more: number | null = null): Axis {
  const [from, to] = [inUnit(grid.from, rateUnit), inUnit(grid.to, rateUnit)],
    high = Math.max(to, more === null || more > 1.5 * to ? 0 : more),
    room = 0.05 * (high - from) || 0.5;
  return valueAxis(`rate asked, ${unitsEach(rateUnit)}`, {
    min: Math.max(0, from - room),
    max: high + room,
    beginAtZero: false,
    ticks: { ...TICKS, includeBounds: false },
  });
}
