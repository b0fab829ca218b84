import type { RateResults } from '../../../study/rate/results.js';
import { font, FONT_FAMILY, textWidth } from '../../canvas.js';
import { paint } from '../../hatch.js';
import { count } from '../../format.js';
import { INK, SIZE, VALUE_FILLS } from '../../style.js';
import { fit } from '../../text.js';
import { chart, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { drawing, onWhite } from '../marks.js';
import { column, columnsRoom, nameAxis, rowHeight, textColumns, type Row } from '../rows.js';

type Point = RateResults['points'][number];
const MOST_NAMED = 7,
  OTHERS = 'others',
  LEAST_LABEL = 40;

/** What stops the line at each rate: one bar a rate, adding to 100 % of its replications. */
export function rateStops(results: RateResults): Chart {
  const { points, changes } = results,
    names = constraintNames(points),
    shown = names.slice(0, names.length > MOST_NAMED + 1 ? MOST_NAMED : MOST_NAMED + 1);
  const series = names.length > shown.length ? [...shown, OTHERS] : shown;
  const rows: Row<Point>[] = points.map((item) => ({ label: `${item.perDay} a day`, item }));
  const columns = [
    column(['verdict'], rows, ({ verdict }) => verdict),
    column(['replications'], rows, ({ replications }) => String(replications)),
  ];
  const shareOf = ({ stops }: Point, name: string): number =>
    stops
      .filter((each) => (name === OTHERS ? !shown.includes(each.name) : each.name === name))
      .reduce((sum, { share }) => sum + 100 * share.share, 0);
  const [change] = changes,
    usual = points[0]?.stops[0]?.name ?? 'nothing';
  return chart({
    finding:
      change === undefined
        ? `At every rate looked at the constraint is ${usual}`
        : `The constraint goes from "${change.before}" to "${change.after}" between ` +
          `${change.fromPerDay} and ${change.toPerDay} a ` +
          `day${changes.length > 1 ? `, and changes ${count(changes.length - 1, 'time')} more above` : ''}`,
    how:
      'Share of replications in which a station, crew, lane or kind of carrier has the highest ' +
      `utilisation, by rate. Their ${Math.round(100 * results.level)} % intervals are in the table ` +
      'of the page.',
    bodyHeight: 130 + rows.length * (rowHeight(rows.length) + 4),
    type: 'bar',
    data: {
      labels: rows.map(({ label }) => label),
      datasets: series.map((name, i) => {
        const fill = VALUE_FILLS[i]!;
        return {
          label: name,
          data: points.map((point) => shareOf(point, name)),
          backgroundColor: paint(fill),
          borderColor: fill.edge,
          borderWidth: 0.8,
          borderSkipped: false as const,
          barPercentage: 0.84,
          categoryPercentage: 1,
        };
      }),
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis('share of replications, %', { position: 'top', stacked: true, max: 100 }),
      y: nameAxis(rows, { stacked: true }),
      room: roomAtRight(columnsRoom(columns)),
    },
    legend: {
      display: true,
      position: 'top',
      align: 'start',
      onClick: () => undefined,
      labels: {
        color: INK,
        boxWidth: 26,
        boxHeight: 13,
        padding: 12,
        font: { family: FONT_FAMILY, size: SIZE.small },
      },
    },
    plugins: [
      textColumns(columns),
      drawing('names in bars', (context, live) => {
        context.font = font(SIZE.small);
        context.textBaseline = 'middle';
        series.forEach((name, i) => {
          live.getDatasetMeta(i).data.forEach((bar, row) => {
            const { x, base, y } = bar.getProps(['x', 'base', 'y'], true) as unknown as {
                x: number;
                base: number;
                y: number;
              },
              room = Math.abs(x - base) - 10;
            if (room < LEAST_LABEL) return;
            const text = fit(`${name} ${Math.round(shareOf(points[row]!, name))} %`, room, SIZE.small);
            onWhite(context, text, (x + base - textWidth(text, SIZE.small)) / 2, y);
          });
        });
      }),
    ],
  });
}

/** By the sum of their shares over the rates. */
function constraintNames(points: readonly Point[]): string[] {
  const sums = new Map<string, number>();
  for (const { stops } of points)
    for (const { name, share } of stops) sums.set(name, (sums.get(name) ?? 0) + share.share);
  return [...sums].sort(([, a], [, b]) => b - a).map(([name]) => name);
}
