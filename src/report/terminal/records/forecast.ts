import { count, exact } from '../../../study/format.js';
import type { ForecastResults } from '../../../study/validate/start/forecast.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';

/** Above this share of builds an order is said to be late. */
const LIKELY = 0.5;

/** Orders that are likelier late than not, in words. */
export function forecastAnswer({ orders, replications }: ForecastResults): string {
  const due = orders.filter(({ late }) => late !== null),
    late = due.filter((order) => (order.late ?? 0) > LIKELY * replications);
  if (due.length === 0) return 'No order has a due date: only dates are told.';
  if (late.length === 0) return `None of ${count(due.length, 'order')} with a due date is likely to be late.`;
  return `${exact(late.length)} of ${count(due.length, 'order')} with a due date will probably be late.`;
}

/** The answer, then a row an order, as plain text of at most `width` columns. */
export function forecastTable(results: ForecastResults, width?: number): string {
  const { orders, replications, seed, at, units, lastUnit, notes, log } = results,
    date = (text: string | null): string => text ?? 'not in the run';
  return joined(
    [
      forecastAnswer(results),
      `On ${at}, from ${log.file}: ${count(units.standing, 'unit')} on the floor, ` +
        `${exact(units.shipped)} shipped, ` +
        `${exact(units.toCome)} to come in.`,
      `Last unit: by ${date(lastUnit.half)} in half of the builds, ` +
        `${date(lastUnit.fourInFive)} in four of five.`,
      `${count(replications, 'build')}, seed ${seed}; ` +
        'late: in so many of them, and days late in half of these',
      ...log.told,
      ...notes,
      '',
      tableOf(orders, [
        { head: 'order', cell: 'unit' },
        { head: 'stands at', cell: ({ at: step }) => step ?? 'not released' },
        { head: 'due', cell: ({ due }) => due ?? '' },
        { head: 'late', align: 'right', cell: ({ late }) => (late === null ? '' : exact(late)) },
        {
          head: 'days late',
          align: 'right',
          cell: ({ daysLate }) => (daysLate === null ? '' : exact(daysLate)),
        },
        { head: 'out by, half', cell: ({ half }) => date(half) },
        { head: 'out by, four of five', cell: ({ fourInFive }) => date(fourInFive) },
      ]),
    ],
    width,
  );
}
