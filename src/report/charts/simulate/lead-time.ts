import { count, number } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, INK, PALETTE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart, intervalNote } from '../chart.js';
import { line } from '../datasets.js';
import { told } from '../figures.js';
import { topWithNames, uprightLines } from '../upright-lines.js';

const BODY_HEIGHT = 430;

/** How lead times of units spread, with their median and ninetieth percentile. */
export function leadTime(results: Results): Chart | null {
  const { counts, edges, p50, p90 } = results.leadTime;
  const units = counts.reduce((sum, each) => sum + each, 0);
  if (units === 0) return null;
  const ruler = evenEdges(edges)
    ? {
        title:
          `units in each class of ${number(widthOf(edges, 0))} ` + (widthOf(edges, 0) === 1 ? 'day' : 'days'),
        heights: counts,
      }
    : {
        title: 'units per day of class width',
        heights: counts.map((each, index) => each / widthOf(edges, index)),
      };
  const top = Math.max(...ruler.heights),
    marks = [
      { name: `half: ${told(p50)} days`, estimate: p50, dash: [] },
      { name: `nine in ten: ${told(p90)} days`, estimate: p90, dash: [7, 4] },
    ];
  return chart({
    finding: `Half of the units take at most ${told(p50)} days, nine in ten at most ${told(p90)}`,
    how:
      `Lead times of ${count(units, 'unit')} of all builds. Grey: ` +
      `${intervalNote(results).replace('of the mean', 'of the lines')}.`,
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      datasets: [
        line(
          ruler.title,
          edges.map((x, index) => ({ x, y: ruler.heights[index] ?? 0 })),
          PALETTE.blue,
          1.5,
          { stepped: 'before', fill: 'origin', backgroundColor: faded(PALETTE.blue, 0.35) },
        ),
      ],
    },
    scales: {
      x: valueAxis('lead time, days', { beginAtZero: false, min: edges[0], max: edges.at(-1) }),
      y: valueAxis(ruler.title, { suggestedMax: topWithNames(top, marks.length, BODY_HEIGHT) }),
    },
    plugins: [
      intervalBands(marks.map(({ estimate }) => estimate)),
      uprightLines(marks.map(({ name, estimate, dash }) => ({ name, at: estimate.mean, colour: INK, dash }))),
    ],
  });
}

/** The intervals of both lines, behind them. */
function intervalBands(estimates: readonly Estimate[]) {
  return drawing('interval bands', (context, chart) => {
    const x = axisOf(chart, 'x'),
      { top, bottom } = chart.chartArea;
    context.fillStyle = faded(PALETTE.black, 0.14);
    for (const { low, high } of estimates) {
      if (low === null || high === null) continue;
      const from = x.getPixelForValue(low);
      context.fillRect(from, top, x.getPixelForValue(high) - from, bottom - top);
    }
  });
}

function evenEdges(edges: readonly number[]): boolean {
  const first = widthOf(edges, 0);
  return edges.slice(1).every((_, index) => Math.abs(widthOf(edges, index) - first) <= 1e-6 * first);
}

function widthOf(edges: readonly number[], index: number): number {
  return (edges[index + 1] ?? NaN) - (edges[index] ?? NaN);
}
