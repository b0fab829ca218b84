import { font } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, INK, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { TICKS, valueAxis, ZERO_GRID } from '../axes.js';
import { type Chart, chart, type Dataset } from '../chart.js';
import { band, line } from '../datasets.js';
import { onWhite } from '../marks.js';
import { dayAxis, momentOf } from '../over-time/days.js';

/** The log over days, in the band of the simulated builds, in a plot of its own. */
export interface LogPlot {
  readonly name: string;
  /** A value a day; where `middle` is left out, there is no line of it. */
  readonly real: readonly number[];
  readonly low: readonly number[];
  readonly middle?: readonly number[];
  readonly high: readonly number[];
  /** Height against that of the other plots. */
  readonly share?: number;
}

/** Height of the row of a name and of the axis of days, and room of the axes at the left, CSS pixels. */
const NAME = 22,
  DAYS = 40,
  AXIS = 48;

/** Where the value of a day stands on the axis. */
type When = 'end of day' | 'middle of day';

interface Plots {
  readonly finding: string;
  readonly how: string;
  /** ISO date of the first day. */
  readonly first: string;
  readonly when: When;
  /** `40 of 40 builds`: what the bands hold. */
  readonly of: string;
  readonly plots: readonly LogPlot[];
  /** Height of all plots, CSS pixels. */
  readonly height: number;
}

/** Plots one under the other over the same days, each with its name at its head. */
export function logPlots({ first, when, of, plots, height, ...titles }: Plots): Chart {
  const start = momentOf(first),
    days = plots[0]?.real.length ?? 0,
    shift = when === 'end of day' ? 1 : 0.5,
    points = (values: readonly number[]) => values.map((y, i) => ({ x: start + i + shift, y })),
    shares = plots.reduce((sum, { share = 1 }) => sum + share, 0);
  return chart({
    ...titles,
    bodyHeight: DAYS + height,
    type: 'line',
    data: {
      datasets: plots.flatMap(({ name, real, low, middle, high }, i): Dataset[] => {
        const axis = { yAxisID: `y${i}` };
        return [
          ...band([`${name}, ${of} low`, points(low)], [`${name}, ${of} high`, points(high)], FILL, axis),
          ...(middle === undefined
            ? []
            : [line(`${name}, model`, points(middle), PALETTE.blue, 1.5, { ...axis, borderDash: [6, 4] })]),
          line(name, points(real), INK, 2, axis),
        ];
      }),
    },
    scales: {
      x: dayAxis(start, start + days, 1),
      ...Object.fromEntries(
        plots.map((plot, i) => [
          `y${i}`,
          valueAxis('', {
            grid: ZERO_GRID,
            stack: 'plots',
            stackWeight: plot.share ?? 1,
            weight: -i,
            ...underName(plot, (height * (plot.share ?? 1)) / shares),
            ticks: { ...TICKS, maxTicksLimit: 5 },
            afterFit: (axis: { width: number }) => {
              axis.width = AXIS;
            },
          }),
        ]),
      ),
    },
    plugins: [
      drawing('names', (context, live) => {
        const { left, right } = live.chartArea;
        context.font = font(SIZE.small, '600');
        context.textBaseline = 'middle';
        for (const [i, { name }] of plots.entries()) {
          const text = fit(name, right - left - 8, SIZE.small, '600');
          onWhite(context, text, left + 5, axisOf(live, `y${i}`).top + NAME / 2);
        }
      }),
    ],
  });
}

const FILL = faded(PALETTE.blue, 0.22);

/** An axis that ends above its values, so that its name has a row without lines and figures. */
function underName({ real, low, high }: LogPlot, height: number): object {
  const most = Math.max(0, ...real, ...high),
    least = Math.min(0, ...real, ...low),
    range = most > least ? most - least : 1,
    row = (range * NAME) / (height - NAME);
  return {
    max: least + range + row,
    afterBuildTicks: (axis: { ticks: { value: number }[] }) => {
      axis.ticks = axis.ticks.filter(({ value }) => value <= least + range + row / 3);
    },
  };
}
