import type { Chart as LiveChart, Plugin } from 'chart.js';
import type { BufferResult } from '../../../study/sections/buffers.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { textOf } from '../../sheets/cells.js';
import { INK, PALETTE } from '../../style.js';
import { fullOf, spacesOf } from '../../tables/buffers.js';
import { TICKS, valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote, intervalWords } from '../chart.js';
import { bars } from '../datasets.js';
import { figures, told } from '../figures.js';
import { foremost } from '../foremost.js';
import { diamondPath } from '../marks.js';
import { perRow, rowChart, rowHeight, rowsBySite, span } from '../row-chart.js';

/**
 * Units in every buffer and bank: mean, the level held 95 % of the time, spaces, and how often it is full.
 */
export function buffers(results: Results): Chart | null {
  if (results.buffers.length === 0) return null;
  const { shown, note } = foremost(
      results.buffers,
      ({ full, mean }) => (full?.mean ?? 0) + mean.mean / 1e9,
      'buffers and banks',
      'most often full',
    ),
    rows = rowsBySite(shown);
  const head = intervalHead(results),
    units = figures(shown.map(({ mean }) => mean)),
    often = figures(
      shown.flatMap(({ full }) => (full === null ? [] : [full])),
      100,
    );
  const levels = perRow(rows, level95),
    spaces = perRow(rows, (item) => item.spaces);
  return rowChart({
    finding: finding(results.buffers),
    how:
      `Bar: ${intervalNote(results)}. Diamond: not more for 95 % of the time ` +
      `(+: the last level counted). Tall tick: spaces.${note}`,
    each: rowHeight(rows.length),
    rows,
    columns: [
      [['mean units', head], (item) => units.short(item.mean)],
      [['spaces'], (buffer) => textOf(spacesOf(buffer))],
      [
        ['full, % of time', head],
        (buffer) => (buffer.full === null ? textOf(fullOf(buffer)) : often.short(buffer.full)),
      ],
    ],
    values: valueAxis('units', {
      ticks: { ...TICKS, precision: 0 },
      suggestedMax: Math.max(1, ...[...levels, ...spaces].map((each) => each ?? 0)) * 1.04,
    }),
    datasets: [
      bars(
        perRow(rows, ({ mean }) => mean.mean),
        { thickness: 0.66 },
      ),
    ],
    intervals: { of: 'mean units', sure: intervalWords(results.level), ends: ({ mean }) => span(mean) },
    plugins: [capacityTicks(spaces), levelDiamonds(levels, perRow(rows, openEnded))],
  });
}

/** The least level k with at least 95 % of the time at k or below; null where the levels are not known. */
export function level95(buffer: BufferResult): number | null {
  if (buffer.levels.length === 0) return null;
  let time = 0;
  const level = buffer.levels.findIndex((share) => (time += share) >= 0.95 - 1e-12);
  return level === -1 ? buffer.levels.length - 1 : level;
}

/** Whether that level is the last one counted, so that the true one may lie above. */
function openEnded(buffer: BufferResult): boolean {
  return buffer.spaces === null && level95(buffer) === buffer.levels.length - 1;
}

function finding(all: readonly BufferResult[]): string {
  const limited = all.filter((item) => item.full !== null);
  const fullest = limited.reduce<BufferResult | null>(
    (most, item) => ((item.full?.mean ?? 0) > (most?.full?.mean ?? 0) ? item : most),
    null,
  );
  if (limited.length === 0)
    return all.every((item) => item.spaces === null)
      ? 'No buffer has a limit, so none is ever full'
      : 'How often buffers are full is not known';
  if (fullest?.full == null) return 'No buffer is ever full';
  return `Full most often: ${fullest.name}, ${told(fullest.full, 100)} % of the time`;
}

function capacityTicks(spaces: readonly (number | null)[]): Plugin {
  return drawing('capacity ticks', (context, chart) => {
    context.strokeStyle = INK;
    context.lineWidth = 2.5;
    eachRow(chart, spaces, (x, y) => {
      polyline(context, [x, y - 9], [x, y + 9]);
    });
  });
}

/** A plus beside the diamond of a level that may be higher. */
function levelDiamonds(levels: readonly (number | null)[], open: readonly (boolean | null)[]): Plugin {
  return drawing('level diamonds', (context, chart) => {
    context.fillStyle = PALETTE.orange;
    context.strokeStyle = INK;
    context.lineWidth = 1.2;
    eachRow(chart, levels, (x, y, row) => {
      diamondPath(context, x, y, 5);
      context.fill();
      context.stroke();
      if (open[row] !== true) return;
      polyline(context, [x + 8, y], [x + 14, y]);
      polyline(context, [x + 11, y - 3], [x + 11, y + 3]);
    });
  });
}

function eachRow(
  chart: LiveChart,
  values: readonly (number | null)[],
  draw: (x: number, y: number, row: number) => void,
): void {
  const x = axisOf(chart, 'x'),
    y = axisOf(chart, 'y');
  values.forEach((value, row) => {
    if (value !== null) draw(x.getPixelForValue(value), y.getPixelForValue(row), row);
  });
}
