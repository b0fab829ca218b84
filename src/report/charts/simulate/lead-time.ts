import { count, number, withInterval } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, INK, PALETTE, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart, intervalNote } from '../chart.js';
import { line } from '../datasets.js';
import { onWhite } from '../marks.js';

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
  const top = Math.max(...ruler.heights);
  // Labels stand at the right of their lines, or both at the left where P90 is late; the one that passes over
  // the other's line is higher.
  const side = isLate(p90, edges) ? 'left' : 'right';
  const marks = [
    mark('P50', p50, top * (side === 'left' ? 1.09 : 1.19)),
    mark('P90', p90, top * (side === 'left' ? 1.19 : 1.09)),
  ];
  return chart({
    finding:
      `Half of the units take at most ${withInterval(p50, 'days')}, nine in ten at most ` +
      withInterval(p90, 'days'),
    how:
      `Lead time of ${count(units, 'unit')} from all replications together (spread of units, not ` +
      'an interval). Lines: the days in which half and nine in ten of them are through; shaded: their ' +
      `${intervalNote(results)}.`,
    bodyHeight: 430,
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
        ...marks.map(({ label, estimate: { mean: x }, height }) =>
          line(
            label,
            [
              { x, y: 0 },
              { x, y: height },
            ],
            INK,
            2,
            {
              borderDash: label.startsWith('P90') ? [7, 4] : [],
            },
          ),
        ),
      ],
    },
    scales: {
      x: valueAxis('lead time, days', { beginAtZero: false, min: edges[0], max: edges.at(-1) }),
      y: valueAxis(ruler.title, { suggestedMax: top * 1.22 }),
    },
    plugins: [intervalBands(marks), markLabels(marks, side)],
  });
}

/** A line at an estimate, as high as the axis value `height`. */
interface Mark {
  readonly label: string;
  readonly estimate: Estimate;
  readonly height: number;
}
function mark(name: string, estimate: Estimate, height: number): Mark {
  return { label: `${name} ${withInterval(estimate, 'days')}`, estimate, height };
}

function intervalBands(marks: readonly Mark[]) {
  return drawing('interval bands', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    context.fillStyle = faded(PALETTE.black, 0.14);
    for (const {
      estimate: { low, high },
      height,
    } of marks) {
      if (low === null || high === null) continue;
      const from = x.getPixelForValue(low);
      const top = y.getPixelForValue(height);
      context.fillRect(from, top, x.getPixelForValue(high) - from, chart.chartArea.bottom - top);
    }
  });
}

/** Labels beside the tops of their lines, kept inside the plot. */
function markLabels(marks: readonly Mark[], side: 'left' | 'right') {
  return drawing('mark labels', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    context.font = font(SIZE.text, '600');
    context.textBaseline = 'middle';
    marks.forEach(({ label, estimate, height }) => {
      const width = textWidth(label, SIZE.text, '600');
      const left = x.getPixelForValue(estimate.low ?? estimate.mean) - 8 - width,
        right = x.getPixelForValue(estimate.high ?? estimate.mean) + 8;
      const leftFits = left >= chart.chartArea.left,
        rightFits = right + width <= chart.chartArea.right;
      const at = (side === 'left' && leftFits) || !rightFits ? left : right;
      onWhite(context, label, at, y.getPixelForValue(height) + 9);
    });
  });
}

/**
 * Whether the label of an estimate would run out of the plot at the right, where labels take a quarter of it.
 */
function isLate(estimate: Estimate, edges: readonly number[]): boolean {
  const from = edges[0] ?? 0,
    to = edges.at(-1) ?? 1;
  return (estimate.high ?? estimate.mean) - from > 0.7 * (to - from);
}

function evenEdges(edges: readonly number[]): boolean {
  const first = widthOf(edges, 0);
  return edges.slice(1).every((_, index) => Math.abs(widthOf(edges, index) - first) <= 1e-6 * first);
}

function widthOf(edges: readonly number[], index: number): number {
  return (edges[index + 1] ?? NaN) - (edges[index] ?? NaN);
}
