import type { SKRSContext2D } from '@napi-rs/canvas';
import type { ChartDataset, Chart as LiveChart, Plugin } from 'chart.js';
import { inUnit, unitsEach } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults, RateVerdict } from '../../../study/rate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { axisOf, drawing } from '../../drawing.js';
import { INK, PALETTE } from '../../style.js';
import { type Axis, TICKS, valueAxis } from '../axes.js';
import { uprightInterval } from '../marks.js';
import type { RateScale } from './rate-scale.js';

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

/**
 * Intervals of the same figure as upright bars: over the points, or thin and behind them where `isLoose`. An
 * arrow is where one goes on above `high` or below the axis.
 */
export function intervalsByRate(
  { points, rateUnit }: RateResults,
  axis: string,
  of: (point: RatePoint) => Estimate,
  { isLoose, high: highest }: Pick<RateScale, 'isLoose' | 'high'> = ALL_FIRM,
): Plugin[] {
  const draw = (context: SKRSContext2D, chart: LiveChart, shown: readonly RatePoint[]): void => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, axis);
    for (const point of shown) {
      const { low, high } = of(point);
      if (low === null || high === null) continue;
      const at = x.getPixelForValue(inUnit(point.perDay, rateUnit));
      uprightInterval(context, y.getPixelForValue(low), y.getPixelForValue(high), at, {
        top: Math.max(y.top, y.getPixelForValue(highest)),
        bottom: y.bottom,
      });
    }
  };
  const [thin, firm] = [points.filter(isLoose), points.filter((point) => !isLoose(point))];
  return [
    drawing(
      `thin intervals ${axis}`,
      (context, chart) => {
        context.strokeStyle = context.fillStyle = THIN;
        context.lineWidth = 1;
        draw(context, chart, thin);
      },
      'beforeDatasetsDraw',
    ),
    drawing(`intervals ${axis}`, (context, chart) => {
      context.strokeStyle = context.fillStyle = INK;
      context.lineWidth = 1.4;
      draw(context, chart, firm);
    }),
  ];
}
const THIN = '#8a8a8a',
  ALL_FIRM: Pick<RateScale, 'isLoose' | 'high'> = { isLoose: () => false, high: Infinity };

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
