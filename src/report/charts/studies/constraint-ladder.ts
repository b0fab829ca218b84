import type { Plugin } from 'chart.js';
import type { ConstraintResult, LadderResult } from '../../../study/constraint/results.js';
import { bounds, capital, intervalName, number, short, signed, withInterval } from '../../../study/format.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { font } from '../../canvas.js';
import { allowedText, largestLoss, rungsOf } from '../../constraint.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { GAINED, INK, LOST, MUTED, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart, intervalNote } from '../chart.js';
import { filledBars } from '../datasets.js';
import { diamondPath, disc, onWhite } from '../marks.js';
import { perRow, type Row, rowChart, rowLabel } from '../row-chart.js';

/** Where a row stands: a change from one level to the next, or a level by itself. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly interval: readonly [number, number] | null;
}

/** Of what arithmetic allows the scale begins at 0 if the lowest level is below this share. */
const CUT_ABOVE = 0.5;

/**
 * From the rate that arithmetic allows what stops the build down to the rate shipped, a floating bar a cause;
 * null where there is no such ladder.
 * @param asked rate, units a working day
 */
export function lossLadder(found: ConstraintResult | null, asked: number | null): Chart | null {
  const ladder = found?.ladder ?? null;
  if (found === null || ladder === null) return null;
  const { allowedPerDay, shippedPerDay } = ladder,
    rows = rowsOf(ladder),
    losses = perRow(rows, ({ from, to }): [number, number] | null => (to < from ? [to, from] : null)),
    gains = perRow(rows, ({ from, to }): [number, number] | null => (to > from ? [from, to] : null)),
    ci = shippedPerDay.low === null ? 'no interval' : intervalName(shippedPerDay.level),
    lowest = Math.min(...rows.map(({ item }) => item?.to ?? Infinity)),
    most = largestLoss(ladder);
  const isCut = lowest > CUT_ABOVE * allowedPerDay;
  return rowChart({
    finding:
      `${capital(allowedText(ladder))} ${number(allowedPerDay)} a day, ` +
      `${withInterval(shippedPerDay)} are shipped` +
      (asked === null ? '' : ` while ${number(asked)} ${asked === 1 ? 'is' : 'are'} asked`) +
      `; ${most === null ? 'nothing is lost' : `largest loss: ${most}`}`,
    how:
      'Units a working day, from what arithmetic allows (diamond) to what is shipped (dot), by cause, ' +
      'the largest loss first. The causes add up to the difference exactly. Black: ' +
      `${intervalNote({ replications: found.replications, level: shippedPerDay.level })}.` +
      (isCut ? ' The scale does not begin at 0.' : '') +
      (asked === null ? '' : ` Dashed: asked, ${number(asked)}.`),
    rows,
    columns: [[['a day', `(${ci})`], ({ text }) => text]],
    values: valueAxis('units a working day', { beginAtZero: !isCut, grace: isCut ? '6%' : 0 }),
    above: 104,
    datasets: [
      { ...filledBars('lost', losses, LOST, 0.62), grouped: false },
      { ...filledBars('gained', gains, GAINED, 0.62), grouped: false },
    ].filter(({ data }) => data.some((each) => each !== null)),
    intervals: ['', ({ interval }) => (interval === null ? null : [...interval])],
    legend: { ...BOX_LEGEND, labels: { ...BOX_LEGEND.labels, filter: ({ text }) => text !== '' } },
    plugins: [connectors(rows), levels(rows, asked)],
  });
}

function rowsOf(ladder: LadderResult): Row<Step>[] {
  const { allowedPerDay, shippedPerDay } = ladder;
  let level = allowedPerDay;
  const steps = rungsOf(ladder).map(({ cause, change }): Row<Step> => {
    const from = level;
    level += change.mean;
    return {
      label: rowLabel(cause),
      item: {
        from,
        to: level,
        text: `${signed(change)} (${bounds(change)})`,
        interval: around(from, change),
      },
    };
  });
  const standing = (label: string, perDay: number, text: string, interval: Step['interval']): Row<Step> => ({
    label: rowLabel(label),
    item: { from: perDay, to: perDay, text, interval },
  });
  return [
    standing(allowedText(ladder), allowedPerDay, number(allowedPerDay), null),
    ...steps,
    standing('shipped', shippedPerDay.mean, short(shippedPerDay), around(0, shippedPerDay)),
  ];
}

const around = (from: number, { low, high }: Estimate): Step['interval'] =>
  low === null || high === null ? null : [from + low, from + high];

/** Thin lines behind the bars from each level to the next row. */
function connectors(rows: readonly Row<Step>[]): Plugin {
  return drawing(
    'connectors',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        y = axisOf(chart, 'y');
      context.strokeStyle = MUTED;
      context.lineWidth = 1;
      rows.slice(1).forEach(({ item }, row) => {
        if (item === null) return;
        const across = x.getPixelForValue(item.from);
        polyline(context, [across, y.getPixelForValue(row)], [across, y.getPixelForValue(row + 1)]);
      });
    },
    'beforeDatasetsDraw',
  );
}

/** Both ends as marks, and the rate asked. */
function levels(rows: readonly Row<Step>[], asked: number | null): Plugin {
  return drawing('levels', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y'),
      { top, bottom, left, right } = chart.chartArea;
    context.lineWidth = 1;
    if (asked !== null && asked >= x.min && asked <= x.max) {
      const across = x.getPixelForValue(asked);
      context.setLineDash([6, 4]);
      context.strokeStyle = INK;
      polyline(context, [across, top], [across, bottom]);
      context.setLineDash([]);
      context.font = font(SIZE.small);
      context.textBaseline = 'middle';
      const text = `asked ${number(asked)}`,
        width = context.measureText(text).width,
        before = across - 6 - width;
      // Away from the mark of what arithmetic allows, where there is room.
      const isBefore = asked <= (rows[0]?.item?.to ?? Infinity) && before > left;
      onWhite(context, text, isBefore ? before : Math.min(across + 6, right - width), top + 9);
    }
    context.fillStyle = INK;
    const first = rows[0]?.item,
      last = rows.at(-1)?.item;
    if (first != null) {
      diamondPath(context, x.getPixelForValue(first.to), y.getPixelForValue(0), 7);
      context.fill();
    }
    if (last != null) disc(context, x.getPixelForValue(last.to), y.getPixelForValue(rows.length - 1), 5);
  });
}
