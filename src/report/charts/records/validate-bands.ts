import { exact } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import {
  boundsText,
  byPosition,
  isJudged,
  measureName,
  measureWords,
  positionOf,
  shownOf,
  valueText,
} from '../../first/records/validate-told.js';
import { faded, LAYOUT, PALETTE } from '../../style.js';
import { ticksAt, valueAxis, ZERO_GRID } from '../axes.js';
import type { Chart } from '../chart.js';
import { rowChart, rowsOf } from '../row-chart.js';
import { IN_WORDS, logMarks } from './in-band.js';

/** Rows of the picture, and how far out of a band it goes. */
const TOP = 25,
  FARTHEST = 2.5,
  /** Below such a width there is no room for three names of the axis, CSS pixels. */
  WIDE = 900;
const TICKS: Readonly<Record<string, string>> = { '-1': 'low end', 0: 'model', 1: 'high end' };

/** Each measure in its band, all on one scale: those that do not agree, then the nearest that do. */
export function measuresInBands(results: ValidateResults): Chart | null {
  const judged = byPosition(shownOf(results).filter(isJudged)),
    most = Math.min(TOP, LAYOUT.mostRows),
    shown = judged.slice(0, most),
    out = judged.filter(({ agrees }) => !agrees),
    [farthest] = out;
  if (shown.length === 0) return null;
  if (judged.length > most && most < TOP) LAYOUT.isCut = true;
  const at = shown.map((each) => Math.max(-FARTHEST, Math.min(FARTHEST, positionOf(each))));
  return rowChart({
    finding:
      farthest === undefined
        ? `All ${exact(judged.length)} measures lie in their bands`
        : out.length === 1
          ? `1 of ${exact(judged.length)} measures lies out of its band: ${measureWords(farthest)}`
          : `${exact(out.length)} of ${exact(judged.length)} measures lie out of their bands, farthest: ` +
            measureWords(farthest),
    how:
      `Each band as wide as any other: where a build of the model lies. ${IN_WORDS} At the edge: out ` +
      'by three quarters of its band and more.' +
      (judged.length > shown.length
        ? ` The ${shown.length} nearest to an end or out; the table has all.`
        : ''),
    rows: rowsOf(shown, measureName),
    columns: [
      [['log'], (each) => valueText(each, each.real)],
      [['model'], (each) => valueText(each, each.simulated.middle)],
      [['between'], boundsText],
    ],
    values: valueAxis('', {
      beginAtZero: false,
      min: -FARTHEST,
      max: FARTHEST,
      grid: ZERO_GRID,
      afterBuildTicks: ticksAt([-1, 0, 1]),
      ticks: {
        maxRotation: 0,
        autoSkip: false,
        callback: (value: number | string) =>
          LAYOUT.width < WIDE ? (value === 0 ? 'band' : '') : (TICKS[value] ?? ''),
      },
    }),
    datasets: [
      {
        label: 'log, in half bands from the model',
        data: at,
        backgroundColor: 'transparent',
        grouped: false,
      },
    ],
    plugins: [
      drawing(
        'band',
        (context, chart) => {
          const x = axisOf(chart, 'x'),
            { top, bottom } = chart.chartArea,
            [left, right] = [x.getPixelForValue(-1), x.getPixelForValue(1)];
          context.fillStyle = faded(PALETTE.blue, 0.16);
          context.fillRect(left, top, right - left, bottom - top);
        },
        'beforeDatasetsDraw',
      ),
      logMarks(shown.map(({ agrees }, i) => ({ agrees, x: at[i] ?? 0 }))),
    ],
  });
}
