import { countTime } from '../../flow/model/later.js';
import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { CARRIER, EQUIPMENT } from '../../flow/model/resources.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { at } from '../../scenario/lookup/columns.js';
import { bankName } from '../../scenario/lookup/ids.js';
import type { Costs } from '../../scenario/types/costs.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { own } from '../../scenario/values/raw.js';
import { spacePrice } from '../../scenario/whole/space-price.js';
import { sum, sumOf } from '../statistics/sums.js';

/** Days of 24 hours observed. */
export const days = ({ minutes }: Observation): number => minutes / MINUTES_PER_DAY;

/**
 * What is paid by the day: so much of something in a stage, by its price there (1: it is money already).
 * `everPriced` says whether costs are ever of a kind.
 */
export function paidByDay(model: Model, costs: Costs, before: NonNullable<Scenario['before']>) {
  // Stages that end before the start are no part of the model.
  const stages = before.slice(before.length - model.later.length),
    pricesIn = (stage: number): Costs | undefined =>
      stage < stages.length ? at(stages, stage).scenario.costs : costs;
  const byDay =
    (count: (stage: Model, prices: Costs) => number, price: (prices: Costs) => number = () => 1) =>
    (each: Observation): number => {
      if (model.later.length === 0) return count(model, costs) * days(each) * price(costs);
      const minutes = countTime(model, each.endedAt, each.minutes, (present, stage) => {
        const prices = pricesIn(stage);
        return prices === undefined ? 0 : count(present, prices) * price(prices);
      });
      return minutes / MINUTES_PER_DAY;
    };
  const everPriced = (is: (prices: Costs) => boolean): boolean =>
    is(costs) || stages.some(({ scenario }) => scenario.costs !== undefined && is(scenario.costs));
  return { byDay, everPriced };
}

/** Money a day for all carriers, in use or not. */
export const carrierDay = ({ resources }: Model, { carriers }: Costs): number =>
  kindDay(resources, CARRIER, carriers);

/** The same for all pieces of shared equipment. */
export const equipmentDay = ({ resources }: Model, { equipment }: Costs): number =>
  kindDay(resources, EQUIPMENT, equipment);

const kindDay = (
  { names, kind, amount }: Model['resources'],
  wanted: number,
  prices: Costs['carriers'] = {},
): number =>
  sumOf(names.keys(), (r) =>
    at(kind, r) === wanted ? at(amount, r) * (own(prices, at(names, r))?.day ?? 0) : 0,
  );

/** Spaces of limited buffers and banks, and places of stations: money a day for floor kept free for units. */
export function floorDay({ stations, lanes, siteNames }: Model, costs: Costs): number {
  const limited = (count: number): number => (count >= 0 && count < UNLIMITED ? count : 0);
  const stationed = stations.names.map((name, s) => {
    const lane =
        at(stations.isBank, s) === 1 ? lanes.names.find((each) => bankName(each) === name) : undefined,
      spaces =
        at(stations.places, s) + limited(at(stations.buffer, s)) + limited(at(stations.reworkBuffer, s));
    return (
      spaces *
      spacePrice(costs, {
        kind: lane === undefined ? 'station' : 'arrival bank',
        of: lane ?? name,
        site: at(siteNames, at(stations.site, s)),
      })
    );
  });
  const banks = lanes.names.map(
    (of, l) =>
      limited(at(lanes.bank, l)) *
      spacePrice(costs, { kind: 'bank', of, site: at(siteNames, at(lanes.from, l)) }),
  );
  return sum(stationed) + sum(banks);
}
