import type { Model } from '../../flow/model/model.js';
import { dayNumber } from '../calendar/date.js';
import { timesOnDay, type WorkingDay } from '../calendar/days.js';
import type { Compilation } from '../lookup/compilation.js';
import type { Order } from '../types/programme.js';
import { own } from '../values/raw.js';
import { type ItemIds, itemColumns, senderIds } from './opening/item-columns.js';
import { midnightOf } from './span.js';

export interface OrdersInTime {
  readonly columns: Model['programme']['orders'];
  /**
   * Release times of all units, sorted: 0 for those of the opening, then those with a day of their own and
   * those by rate.
   */
  readonly times: Float64Array;
}

interface Slot {
  readonly time: number;
  readonly order: Order | undefined;
}

/**
 * Numbers the units: those of the opening, the farthest along the route first; then all others by time of
 * release, at one time those of the list in its order. Listed units without a day of release take the times
 * by rate in their order, and what is left of these is drawn. Units that the run ends before come last.
 */
export function compileOrders(
  all: Compilation & ItemIds,
  days: readonly WorkingDay[],
  byRate: Float64Array,
): OrdersInTime {
  const { scenario, ids, laid, span } = all,
    {
      orders: { list, dueAfterMin, replaceScrapped },
      quantity,
      startMin,
    } = scenario.programme,
    end = Math.min(span.end, span.horizon);
  const stepOf = ({ at }: Order): number =>
    laid.steps.findIndex((step) => step.route === 0 && step.name === at && step.kind !== 'bank');
  const standing = list
    .filter(({ at }) => at !== undefined)
    .map((order) => ({ order, step: stepOf(order) }))
    .sort((a, b) => b.step - a.step);
  const opening = standing.map(({ order }) => order),
    inTurn = list.filter(({ at, release }) => at === undefined && release === undefined);
  const slots: Slot[] = [
    ...dated(list, days, startMin === undefined ? -Infinity : 0),
    ...Array.from(byRate, (time, i) => ({ time, order: inTurn[i] })),
  ].filter(({ time }) => time < end);
  const places = new Map(list.map((order, i) => [order, i])),
    rank = ({ order }: Slot): number => (order && places.get(order)) ?? Infinity;
  slots.sort((a, b) => a.time - b.time || (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0));
  const released = new Set(slots.map(({ order }) => order));
  const known: (Order | undefined)[] = [
    ...standing.map(({ order }) => order),
    ...slots.map(({ order }) => order),
    ...list.filter((order) => order.at === undefined && !released.has(order)),
  ];
  const rows = known.slice(0, known.findLastIndex((order) => order !== undefined) + 1),
    options = Object.keys(scenario.programme.options);
  const valueOf = (order: Order | undefined, option: string): number => {
    const value = order && own(order.options, option);
    return value === undefined ? -1 : ids.value(option, value);
  };
  return {
    columns: {
      count: rows.length,
      names: buildNames(rows, quantity ?? rows.length),
      values: Int16Array.from(rows.flatMap((order) => options.map((option) => valueOf(order, option)))),
      dueAt: Float64Array.from(rows, (order) =>
        order?.due === undefined ? Infinity : midnightOf(dayNumber(order.due) + 1, span),
      ),
      dueAfter: dueAfterMin ?? Infinity,
      openingStep: Int32Array.from(standing, ({ step }) => step),
      openingDone: Float64Array.from(opening, ({ doneMin }) => doneMin ?? 0),
      openingSender: senderIds(all, opening),
      items: itemColumns(all, opening),
      replaceScrapped,
    },
    times: Float64Array.from([...standing.map(() => 0), ...slots.map(({ time }) => time)]),
  };
}

/** Units with a day of release, spread over its working time; none before a time. */
function dated(list: readonly Order[], days: readonly WorkingDay[], from: number): Slot[] {
  const byDay = new Map<number, Order[]>();
  for (const order of list) {
    if (order.release === undefined) continue;
    const day = dayNumber(order.release);
    byDay.set(day, [...(byDay.get(day) ?? []), order]);
  }
  return days.flatMap((day) => {
    const orders = byDay.get(day.day) ?? [];
    return timesOnDay(day, orders.length).map((time, i) => ({
      time: Math.max(from, time),
      order: orders[i],
    }));
  });
}

/** A unit without a build number is called by its running number, unless the planner calls another one so. */
function buildNames(rows: readonly (Order | undefined)[], units: number): (string | undefined)[] {
  const names = rows.map((order) => order?.build);
  for (const name of names.slice()) {
    const number = /^[1-9]\d{0,7}$/.test(name ?? '') ? Number(name) : 0;
    if (number > 0 && number <= units && names[number - 1] === undefined)
      names[number - 1] = `unit ${number}`;
  }
  return names;
}
