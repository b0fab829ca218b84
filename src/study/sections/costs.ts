import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import type { Costs, HourPrice } from '../../scenario/types/costs.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { own } from '../../scenario/values/raw.js';
import { carrierDay, days, equipmentDay, floorDay, paidByDay } from '../sample/by-day.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sum, sumOf } from '../statistics/sums.js';
import { tripsAgain } from './lanes.js';

/** Money per unit shipped and in all, over the time observed. */
export interface CostResult {
  readonly currency: string;
  readonly perUnit: Estimate;
  readonly total: Estimate;
  /** What has a price, in a fixed order; they add to the whole. */
  readonly parts: readonly CostPart[];
  /** What rework costs, within the above: people's time and trips in it, send-backs and scrap. */
  readonly rework: ReworkCost;
}
export interface CostPart {
  readonly name: string;
  readonly perUnit: Estimate;
  /** Share of the mean cost of a unit. */
  readonly share: number;
}
export interface ReworkCost {
  /** Person-hours of work done again and of repairs, per unit shipped. */
  readonly hoursPerUnit: Estimate;
  readonly costPerUnit: Estimate;
}

const NOTHING: HourPrice = { hour: 0, overtimeHour: 0 };

/** Money of one replication that goes to one part. */
export interface Part {
  readonly name: string;
  readonly of: (observation: Observation) => number;
}
/** The part that is the same for every replication of a day. */
export const FLOOR = 'floor';

/**
 * Cost of a unit shipped: what has a price, over the time observed, by what was shipped in it. null where
 * nothing has.
 */
export function costs(sample: Sample): Pending<CostResult | null> {
  const { scenario, model } = sample,
    { costs } = scenario;
  if (costs === undefined) return null;
  const parts = pricedParts(model, costs, scenario.before),
    total = totalOf(parts),
    hourly = hourPrices(model, costs).map(({ hour }) => hour),
    tripPrices = model.lanes.names.map((name) => own(costs.trucks, name)?.trip ?? 0);
  const perUnit = (of: (observation: Observation) => number) =>
      sample.amount((each) => ratio(of(each), each.shipped)),
    whole = perUnit(total);
  return {
    currency: costs.currency,
    perUnit: whole,
    total: sample.amount(total),
    parts: parts.map(({ name, of }) => {
      const part = perUnit(of);
      return {
        name,
        perUnit: part,
        share: new Deferred(() => ratio(part.value.mean, whole.value.mean) || 0),
      };
    }),
    rework: {
      hoursPerUnit: perUnit(({ reworkMinutes }) => sumOf(reworkMinutes, (minutes) => minutes / 60)),
      costPerUnit: perUnit(
        (each) =>
          paidAt(each.reworkMinutes, hourly) +
          tripsAgain(each.lanes, tripPrices) +
          sendBacks(each) * (costs.sendBack ?? 0) +
          each.scrapped * (costs.scrap ?? 0),
      ),
    },
  };
}

/** Of all of them only what a unit costs; null where nothing has a price. */
export function costPerUnit(sample: Sample): Deferred<Estimate> | null {
  const cost = unitCost(sample.scenario, sample.model);
  return cost === null ? null : sample.amount(cost);
}

/** Money a unit shipped in a replication; null where nothing has a price. */
export function unitCost(
  { costs, before }: Scenario,
  model: Model,
): ((observation: Observation) => number) | null {
  if (costs === undefined) return null;
  const money = totalOf(pricedParts(model, costs, before));
  return (each) => ratio(money(each), each.shipped);
}

/** By crew. */
const hourPrices = ({ resources }: Model, { people }: Costs): HourPrice[] =>
  resources.names
    .slice(0, resources.crews)
    .map((crew) => own(people, crew) ?? own(people, 'default') ?? NOTHING);
const totalOf =
  (parts: readonly Part[]) =>
  (observation: Observation): number =>
    sumOf(parts, ({ of }) => of(observation));

/**
 * All that has a price, in the order of the results. What is paid by the day follows what is there on the
 * day, at the prices of then; all other prices are those of the end.
 * @param before how the scenario is before changes are there
 */
export function pricedParts(model: Model, costs: Costs, before: Scenario['before'] = []): Part[] {
  const { lanes, resources, stations, supplies } = model,
    prices = hourPrices(model, costs),
    hourly = prices.map(({ hour }) => hour),
    overtimeHourly = prices.map(({ overtimeHour }) => overtimeHour),
    { byDay, everPriced } = paidByDay(model, costs, before),
    parts: Part[] = [];
  const add = (isPriced: boolean, name: string, of: Part['of']): void => {
    if (isPriced) parts.push({ name, of });
  };
  const hasPeople = Object.keys(costs.people).length > 0;
  add(hasPeople, 'people', ({ crewTime }) => paidAt(crewTime.usual, hourly));
  add(hasPeople, 'overtime', ({ crewTime }) => paidAt(crewTime.overtime, overtimeHourly));
  const hasTrucks = everPriced(({ trucks }) => Object.keys(trucks).length > 0),
    trucksByDay = lanes.names.map((name, lane) =>
      byDay(
        ({ lanes: { trucks } }) => trucks[lane],
        ({ trucks }) => own(trucks, name)?.day ?? 0,
      ),
    );
  add(hasTrucks, 'trucks', (each) =>
    lanes.names.reduce((money, name, lane) => {
      const { trip = 0 } = own(costs.trucks, name) ?? {};
      return money + each.lanes.trips[lane] * trip + trucksByDay[lane](each);
    }, 0),
  );
  for (const [name, day] of [
    ['equipment', equipmentDay],
    ['carriers', carrierDay],
  ] as const)
    add(
      everPriced((each) => each[name] !== undefined),
      name,
      byDay(day),
    );
  add(costs.unitDay !== undefined, 'units in work', (each) => each.wip * days(each) * costs.unitDay!);
  add(
    everPriced(({ spaceDay }) => spaceDay !== undefined),
    FLOOR,
    byDay(floorDay),
  );
  add(Object.keys(costs.supplies).length > 0, 'supplies', (each) =>
    Array.from(supplies.resource).reduce((money, resource, id) => {
      const { lot = 0, stockDay = 0 } = own(costs.supplies, resources.names[resource]) ?? {};
      return money + each.supplies.lots[id] * lot + each.stockMean[resource] * days(each) * stockDay;
    }, 0),
  );
  const changes = Object.entries(costs.changeovers).map(([name, price]) => ({
    price,
    count: changeoversAt(model, stations.names.indexOf(name)),
  }));
  add(changes.length > 0, 'changeovers', (each) => sumOf(changes, ({ price, count }) => count(each) * price));
  add(costs.sendBack !== undefined, 'send-backs', (each) => sendBacks(each) * costs.sendBack!);
  add(costs.scrap !== undefined, 'scrap', (each) => each.scrapped * costs.scrap!);
  add(costs.lateDay !== undefined, 'late units', (each) => lateDays(each) * costs.lateDay!);
  add(
    everPriced(({ standingDay }) => standingDay !== undefined),
    'standing',
    byDay((_, { standingDay = 0 }) => standingDay),
  );
  return parts;
}

/** Person-minutes by crew at the price of an hour. */
const paidAt = (minutes: Float64Array, hourly: readonly number[]): number =>
  minutes.reduce((money, each, crew) => money + (each / 60) * hourly[crew], 0);

/** Changeovers made at a station. */
export function changeoversAt({ stations }: Model, station: number): (observation: Observation) => number {
  const first = stations.changeoverStart[station],
    pairs = stations.changeoverValues[station].length ** 2;
  return ({ changeovers }) => sum(changeovers.subarray(first, first + pairs));
}

export const sendBacks = ({ inspections }: Observation): number => sum(inspections.sentBack);

/**
 * Unit-days after due dates: of units shipped, and to the end of the run of those that never are. Single
 * units are not kept without a quantity, and only those shipped count then.
 */
export function lateDays({ dueAt, shippedAt, lateMinutes, endedAt }: Observation): number {
  const never = dueAt.map((due, i) => (shippedAt[i] >= 0 ? 0 : Math.max(0, endedAt - due)));
  return (lateMinutes + sum(never)) / MINUTES_PER_DAY;
}
