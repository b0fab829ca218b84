import type { BarElement, Plugin } from 'chart.js';
import { count, exact } from '../../../study/format.js';
import { inUnit, rateText } from '../../../study/planners-unit.js';
import type { RateResults } from '../../../study/rate/results.js';
import { font, textWidth } from '../../canvas.js';
import { drawing } from '../../drawing.js';
import { type Fill, SIZE, shareFill } from '../../style.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart } from '../chart.js';
import { filledBars } from '../datasets.js';
import { onWhite } from '../marks.js';
import { type Row, rowChart } from '../row-chart.js';

type Point = RateResults['points'][number];
const MOST_NAMED = 7,
  OTHERS = 'others',
  LEAST_LABEL = 40;

/** What stops at each rate, as per cent of its replications. */
interface Share {
  readonly name: string;
  readonly fill: Fill;
  readonly byRate: readonly number[];
}

/** One thing in at least such a share of the builds at every rate: no picture is needed to say it. */
const ALL = 0.9;

/**
 * What is used most at each rate: one bar a rate, adding to 100 % of its builds; null where it is the same at
 * all of them.
 */
export function rateStops(results: RateResults): Chart | null {
  const { points, changes, rateUnit } = results,
    names = constraintNames(points);
  const isOne = ({ stops }: Point): boolean =>
    stops.some(({ name, share }) => name === names[0] && share.share >= ALL);
  if (points.every(isOne)) return null;
  const shown = names.slice(0, names.length > MOST_NAMED + 1 ? MOST_NAMED : MOST_NAMED + 1),
    series = names.length > shown.length ? [...shown, OTHERS] : shown;
  const rows: Row<Point>[] = points.map((item) => ({ label: rateText(item.perDay, rateUnit), item }));
  const shareOf = ({ stops }: Point, name: string): number =>
    stops
      .filter((each) => (name === OTHERS ? !shown.includes(each.name) : each.name === name))
      .reduce((sum, { share }) => sum + 100 * share.share, 0);
  const shares = series.map((name, i) => ({
    name,
    fill: shareFill(i),
    byRate: points.map((point) => shareOf(point, name)),
  }));
  const [change] = changes,
    usual = points[0]?.stops[0]?.name ?? 'nothing';
  return rowChart({
    finding:
      change === undefined
        ? `At every rate looked at ${usual} is used most`
        : `What is used most goes from "${change.before}" to "${change.after}" between ` +
          `${exact(inUnit(change.fromPerDay, rateUnit))} and ${rateText(change.toPerDay, rateUnit)}` +
          (changes.length > 1 ? `, and changes ${count(changes.length - 1, 'time')} more above` : ''),
    how: 'Share of builds in which it is used most, by rate: a hint; what was tried tells what stops it.',
    above: 130,
    rows,
    columns: [
      [['verdict'], ({ verdict }) => verdict],
      [['builds'], ({ replications }) => exact(replications)],
    ],
    values: valueAxis('share of builds, %', { stacked: true, max: 100 }),
    stacked: true,
    datasets: shares.map(({ name, fill, byRate }) => filledBars(name, byRate, fill, 0.84, 0.8)),
    legend: BOX_LEGEND,
    plugins: [namesInBars(shares)],
  });
}

/** What a bar is called, and how much of it, where there is room for it. */
function namesInBars(shares: readonly Share[]): Plugin {
  return drawing('names in bars', (context, live) => {
    context.font = font(SIZE.small);
    context.textBaseline = 'middle';
    for (const [i, { name, byRate }] of shares.entries()) {
      for (const [row, bar] of live.getDatasetMeta(i).data.entries()) {
        const { x, y } = bar,
          { base } = (bar as BarElement).getProps(['base'], true),
          room = Math.abs(x - base) - 10;
        if (room < LEAST_LABEL) continue;
        const text = fit(`${name} ${Math.round(byRate[row] ?? 0)} %`, room, SIZE.small);
        onWhite(context, text, (x + base - textWidth(text, SIZE.small)) / 2, y);
      }
    }
  });
}

/** By the sum of their shares over the rates. */
function constraintNames(points: readonly Point[]): string[] {
  const sums = new Map<string, number>();
  for (const { stops } of points)
    for (const { name, share } of stops) sums.set(name, (sums.get(name) ?? 0) + share.share);
  return [...sums].sort(([, a], [, b]) => b - a).map(([name]) => name);
}
