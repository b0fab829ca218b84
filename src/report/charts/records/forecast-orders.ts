import type { Plugin } from 'chart.js';
import type { ForecastResults, OrderAhead } from '../../../study/forecast/forecast.js';
import { count, exact } from '../../../study/format.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import {
  behindText,
  dateOrNot,
  dueOf,
  isLikelyLate,
  lateText,
  likelyLate,
  standsAt,
} from '../../first/records/forecast-told.js';
import { GAINED, INK, LAYOUT, LOST } from '../../style.js';
import type { Chart, Dataset } from '../chart.js';
import { box } from '../marks.js';
import { dayAxis, momentOf } from '../over-time/days.js';
import { perRow, type Row, rowChart, rowsOf } from '../row-chart.js';

const TOP = 40,
  /** Half the height of a bar, and of the mark of a due day, CSS pixels. */
  HALF = 6,
  HALF_DUE = 10,
  /** CSS pixels. */
  WIDE = 900;

/** A row an order: when it is due, and when it is out; the likeliest late first. */
export function ordersAhead(results: ForecastResults): Chart | null {
  const { orders, replications, at } = results,
    most = Math.min(TOP, LAYOUT.mostRows),
    shown = orders.slice(0, most),
    isDue = dueOf(results).length > 0;
  if (shown.every(({ due, half }) => due === null && half === null)) return null;
  if (orders.length > most && most < TOP) LAYOUT.isCut = true;
  const zero = momentOf(at),
    days = (date: string | null): number | null => (date === null ? null : momentOf(date) - zero),
    drawn = shown
      .flatMap(({ due, half, fourInFive }) => [days(due), days(half), days(fourInFive)])
      .filter((day) => day !== null),
    // A day lasts to the start of the next.
    ends = [Math.min(...drawn) - 1, Math.max(...drawn) + 1.5] as const,
    rows = rowsOf(shown, (order) => `${order.unit}, ${order.at === null ? '' : 'at '}${standsAt(order)}`);
  const unseen = (name: string, date: (order: OrderAhead) => string | null): Dataset => ({
    label: `${name}, days after ${at}`,
    data: perRow(rows, (order) => days(date(order))),
    backgroundColor: 'transparent',
    grouped: false,
  });
  return rowChart({
    finding: finding(results),
    how:
      'Bars: from the day of half of the builds to that of four of five.' +
      (isDue
        ? ` Upright: end of the due day. Hatched: likely late, by the end of it in less than half.`
        : '') +
      (orders.length > shown.length
        ? ` Of ${exact(orders.length)} orders the ${shown.length} ${isDue ? 'likeliest late' : 'first out'}.`
        : ''),
    rows,
    columns: [
      ...(isDue
        ? ([
            [['late in'], (order: OrderAhead) => lateText(order, replications)],
            [['days late'], behindText],
            [['due'], ({ due }: OrderAhead) => due ?? ''],
          ] as const)
        : []),
      // The bars show these; on paper they would leave the bars no room.
      ...(LAYOUT.width < WIDE && isDue
        ? []
        : ([
            [['out by, half'], ({ half }: OrderAhead) => dateOrNot(half)],
            [['four of five'], ({ fourInFive }: OrderAhead) => dateOrNot(fourInFive)],
          ] as const)),
    ],
    values: dayAxis(zero + ends[0], zero + ends[1], 1, { zero, most: LAYOUT.width < WIDE ? 2 : 4 }),
    datasets: [
      ...(isDue ? [unseen('due', ({ due }) => due)] : []),
      unseen('out in half of the builds', ({ half }) => half),
      unseen('out in four of five', ({ fourInFive }) => fourInFive),
    ],
    plugins: [spans(rows, days, replications)],
  });
}

/** The days between which an order is out, and its due day. */
function spans(
  rows: readonly Row<OrderAhead>[],
  days: (date: string | null) => number | null,
  replications: number,
): Plugin {
  return drawing('orders', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y'),
      { right } = chart.chartArea;
    for (const [row, { item }] of rows.entries()) {
      if (item === null) continue;
      const top = y.getPixelForValue(row),
        [half, most, due] = [item.half, item.fourInFive, item.due].map(days);
      if (half != null) {
        const from = x.getPixelForValue(half),
          end = most == null ? right : x.getPixelForValue(most + 1);
        box(
          context,
          from,
          top - HALF,
          end - from,
          2 * HALF,
          isLikelyLate(item, replications) ? LOST : GAINED,
        );
      }
      if (due != null) {
        const at = x.getPixelForValue(due + 1);
        for (const [colour, width] of [
          ['#ffffff', 5],
          [INK, 2.4],
        ] as const) {
          context.strokeStyle = colour;
          context.lineWidth = width;
          polyline(context, [at, top - HALF_DUE], [at, top + HALF_DUE]);
        }
      }
    }
  });
}

function finding(results: ForecastResults): string {
  const due = dueOf(results).length,
    late = likelyLate(results),
    [first] = late;
  if (due === 0) return `${count(results.orders.length, 'order')}, none with a due day`;
  return first === undefined
    ? `No order is likely late, of ${exact(due)} with a due day`
    : `${exact(late.length)} of ${count(due, 'order')} with a due day ${late.length === 1 ? 'is' : 'are'} ` +
        `likely late; likeliest: ${first.unit}, by ${behindText(first)}`;
}
