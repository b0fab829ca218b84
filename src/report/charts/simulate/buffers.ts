import type { BufferResult, Results } from '../../../study/simulate/results.js';
import { intervalName, percentWithInterval, short } from '../../format.js';
import { INK, MUTED, PALETTE, SIZE } from '../../style.js';
import { chart, intervalHead, intervalNote, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { drawing, whiskers } from '../marks.js';
import { column, columnsRoom, nameAxis, perRow, rowHeight, rowsBySite, textColumns } from '../rows.js';

/**
 * Units in every buffer and bank: mean, the level held 95 % of the time, spaces, and how often it is full.
 */
export function buffers(results: Results): Chart | null {
  if (results.buffers.length === 0) return null;
  const rows = rowsBySite(results.buffers);
  const ci = intervalName(results.level);
  const head = intervalHead(results);
  const columns = [
    column(['mean units', head], rows, (item) => short(item.mean)),
    column(['spaces'], rows, (item) => (item.spaces === null ? 'unlimited' : String(item.spaces))),
    column(['full, % of time', head], rows, (item) =>
      item.full === null ? (item.spaces === null ? 'never' : 'not known') : short(item.full, 100),
    ),
  ];
  const levels = perRow(rows, level95),
    spaces = perRow(rows, (item) => item.spaces);
  return chart({
    finding: finding(results.buffers),
    how:
      `Units in each buffer and bank. Bar: mean, with ${intervalNote(results)}. Diamond: level not ` +
      'passed 95 % of the time (with + where it is the last level counted). Tall tick: spaces.',
    bodyHeight: 64 + rows.length * rowHeight(rows.length),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: 'mean, units',
          data: perRow(rows, (item) => item.mean.mean),
          backgroundColor: PALETTE.blue,
          grouped: false,
          barPercentage: 0.66,
          categoryPercentage: 1,
        },
        {
          label: ci,
          data: perRow(rows, (item) =>
            item.mean.low === null || item.mean.high === null
              ? null
              : ([item.mean.low, item.mean.high] as [number, number]),
          ),
          backgroundColor: 'transparent',
          grouped: false,
        },
      ],
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis('units', {
        position: 'top',
        ticks: { precision: 0, color: MUTED, padding: 6, font: { size: SIZE.small } },
        suggestedMax:
          Math.max(1, ...levels.map((each) => each ?? 0), ...spaces.map((each) => each ?? 0)) * 1.04,
      }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [
      capacityTicks(spaces),
      whiskers(1),
      levelDiamonds(levels, perRow(rows, openEnded)),
      textColumns(columns),
    ],
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
  return `Full most often: ${fullest.name}, ${percentWithInterval(fullest.full)} of the time`;
}

function capacityTicks(spaces: readonly (number | null)[]) {
  return drawing('capacity ticks', (context, chart) => {
    context.strokeStyle = INK;
    context.lineWidth = 2.5;
    eachRow(chart, spaces, (x, y) => {
      context.beginPath();
      context.moveTo(x, y - 9);
      context.lineTo(x, y + 9);
      context.stroke();
    });
  });
}

function levelDiamonds(levels: readonly (number | null)[], open: readonly (boolean | null)[]) {
  return drawing('level diamonds', (context, chart) => {
    context.fillStyle = PALETTE.orange;
    context.strokeStyle = INK;
    context.lineWidth = 1.2;
    eachRow(chart, levels, (x, y, row) => {
      context.beginPath();
      context.moveTo(x, y - 5);
      context.lineTo(x + 5, y);
      context.lineTo(x, y + 5);
      context.lineTo(x - 5, y);
      context.closePath();
      context.fill();
      context.stroke();
      if (open[row] === true) {
        context.beginPath();
        context.moveTo(x + 8, y);
        context.lineTo(x + 14, y);
        context.moveTo(x + 11, y - 3);
        context.lineTo(x + 11, y + 3);
        context.stroke();
      }
    });
  });
}

type Live = Parameters<Parameters<typeof drawing>[1]>[1];
function eachRow(
  chart: Live,
  values: readonly (number | null)[],
  draw: (x: number, y: number, row: number) => void,
): void {
  const x = chart.scales['x'],
    y = chart.scales['y'];
  values.forEach((value, row) => {
    if (value !== null && x && y) draw(x.getPixelForValue(value), y.getPixelForValue(row), row);
  });
}
