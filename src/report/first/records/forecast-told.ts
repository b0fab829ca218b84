import type { ForecastResults, OrderAhead } from '../../../study/forecast/forecast.js';
import { count, exact } from '../../../study/format.js';

/** Above this share of builds an order is said to be likely late. */
const LIKELY = 0.5;

type Of = Pick<ForecastResults, 'orders' | 'replications'>;

export const dueOf = ({ orders }: Of): OrderAhead[] => orders.filter(({ due }) => due !== null);

export const isLikelyLate = ({ late }: OrderAhead, replications: number): boolean =>
  (late ?? 0) > LIKELY * replications;

export const likelyLate = ({ orders, replications }: Of): OrderAhead[] =>
  orders.filter((order) => isLikelyLate(order, replications));

export const standsAt = ({ at }: Pick<OrderAhead, 'at'>): string => at ?? 'not released';

/** An ISO date, or that it is not reached. */
export const dateOrNot = (date: string | null): string => date ?? 'not in the run';

/** `97 of 100`; '' without a due day. */
export const lateText = ({ late }: OrderAhead, replications: number): string =>
  late === null ? '' : `${exact(late)} of ${exact(replications)}`;

/** `4 days`; that it is never out where more than half of the late builds do not ship it. */
export const behindText = ({ late, daysLate }: OrderAhead): string =>
  daysLate === null ? ((late ?? 0) > 0 ? 'not out in the run' : '') : count(daysLate, 'day');

/** Places with how many of the orders stand there, the most first. */
export function whereTheyStand(orders: readonly OrderAhead[]): { place: string; units: OrderAhead[] }[] {
  const by = new Map<string, OrderAhead[]>();
  for (const order of orders) {
    const place = standsAt(order);
    by.set(place, [...(by.get(place) ?? []), order]);
  }
  return [...by].map(([place, units]) => ({ place, units })).sort((a, b) => b.units.length - a.units.length);
}

/** Where the floor stands, and when the last unit is out. */
export function forecastInFull({
  at,
  time,
  log,
  units,
  lastUnit: { half, fourInFive },
}: ForecastResults): string {
  return (
    `On ${at}${time === null ? '' : ` at ${time}`}, from ${log.file}: ` +
    `${count(units.standing, 'unit')} on the floor, ` +
    `${exact(units.shipped)} shipped, ${exact(units.toCome)} to come in. ` +
    `Last unit: by ${dateOrNot(half)} in half of the builds, ${dateOrNot(fourInFive)} in four of five.`
  );
}
