import type { Plugin } from 'chart.js';
import type { ConstraintResult, LadderResult } from '../../../study/constraint/results.js';
import { number } from '../../../study/format.js';
import { type Estimate, negated } from '../../../study/statistics/estimate.js';
import { font } from '../../canvas.js';
import { allowedText, type Rung, rungsOf } from '../../constraint.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { GAINED, INK, isNarrow, LOST, MUTED, SIZE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart, intervalHead, intervalNote } from '../chart.js';
import { filledBars } from '../datasets.js';
import { type Figures, figures, told } from '../figures.js';
import { diamondPath, disc, onWhite } from '../marks.js';
import { perRow, type Row, rowChart } from '../row-chart.js';

/** Where a row stands: a change from one level to the next, or a level by itself. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly interval: readonly [number, number] | null;
}

/** Of what arithmetic allows the scale begins at 0 if the lowest level is below this share. */
const CUT_ABOVE = 0.5;
/** Of what arithmetic allows: causes below it that are not even sure are told together. */
const LITTLE = 0.01;

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
    lowest = Math.min(...rows.map(({ item }) => item?.to ?? Infinity)),
    [most] = rungsOf(ladder);
  const seen = { replications: found.replications, level: shippedPerDay.level },
    isCut = lowest > CUT_ABOVE * allowedPerDay;
  return rowChart({
    finding:
      `${told(shippedPerDay)} a day shipped of ${number(allowedPerDay)} that averages allow; ` +
      (most === undefined || most.change.mean >= 0
        ? 'nothing is lost'
        : `largest loss: ${most.cause}, ${told(negated(most.change))}`),
    how:
      `Units a working day at ${ladder.of.name}, from averages down to what is shipped, by cause; with the ` +
      `${intervalNote(seen)}.` +
      (isCut ? ' The scale does not begin at 0.' : ''),
    rows,
    columns: [[['a day', intervalHead(seen)], ({ text }) => text]],
    values: valueAxis('units a working day', { beginAtZero: !isCut, grace: isCut ? '6%' : 0 }),
    above: 104,
    datasets: [
      { ...filledBars('lost', losses, LOST, 0.62), grouped: false },
      { ...filledBars('gained', gains, GAINED, 0.62), grouped: false },
    ].filter(({ data }) => data.some((each) => each !== null)),
    intervals: { of: '', sure: '', ends: ({ interval }) => (interval === null ? null : [...interval]) },
    legend: { ...BOX_LEGEND, labels: { ...BOX_LEGEND.labels, filter: ({ text }) => text !== '' } },
    plugins: [connectors(rows), levels(rows, asked)],
  });
}

function rowsOf(ladder: LadderResult): Row<Step>[] {
  const { allowedPerDay, shippedPerDay } = ladder;
  let level = allowedPerDay;
  const rungs = rungsOf(ladder),
    small = rungs.filter(({ change }) => isNothing(change, allowedPerDay)),
    single = small.length > 1 ? rungs.filter((rung) => !small.includes(rung)) : rungs,
    write = figures([shippedPerDay, ...single.map(({ change }) => change)]);
  const step = (cause: string, change: number, text: string, ends: Estimate | null): Row<Step> => {
    const from = level;
    level += change;
    return {
      label: cause,
      item: { from, to: level, text, interval: ends === null ? null : around(from, ends) },
    };
  };
  const steps = [
    ...single.map(({ cause, change }) => step(cause, change.mean, signedShort(write, change), change)),
    ...(small.length > 1 ? [together(small)] : []),
  ];
  function together(all: readonly Rung[]): Row<Step> {
    const sum = all.reduce((total, { change }) => total + change.mean, 0),
      text = number(Number(sum.toFixed(2)));
    return step(`${all.length} others, none sure`, sum, sum > 0 ? `+${text}` : text, null);
  }
  const standing = (label: string, perDay: number, text: string, interval: Step['interval']): Row<Step> => ({
    label,
    item: { from: perDay, to: perDay, text, interval },
  });
  return [
    standing(allowedText(ladder), allowedPerDay, number(allowedPerDay), null),
    ...steps,
    standing('shipped', shippedPerDay.mean, write.short(shippedPerDay), around(0, shippedPerDay)),
  ];
}

/** A cause that may as well bring as take, and little of either. */
const isNothing = ({ mean, low, high }: Estimate, allowed: number): boolean =>
  low !== null && high !== null && low <= 0 && high >= 0 && Math.abs(mean) < LITTLE * allowed;

const signedShort = (write: Figures, change: Estimate): string =>
  `${change.mean > 0 && /[1-9]/.test(write.mean(change)) ? '+' : ''}${write.short(change)}`;

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
      onWhite(
        context,
        text,
        isBefore ? before : Math.min(across + 6, right - width),
        isNarrow() ? y.getPixelForValue(0) : top + 9,
      );
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
