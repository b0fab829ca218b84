import type { Observation } from '../../measure/observe.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

/**
 * Trips begun; fill is units carried over truck spaces; wait is that of units carried, for their truck. Truck
 * time is busy, blocked (waiting for room ahead) or free (at base).
 */
export interface LaneResult {
  readonly name: string;
  readonly trips: Estimate;
  readonly fill: Estimate;
  readonly waitHours: Estimate;
  readonly truckBusy: Estimate;
  readonly truckBlocked: Estimate;
  readonly truckFree: Estimate;
}

/** Lanes in the order of the scenario. */
export function lanes(sample: Sample): Pending<LaneResult[]> {
  const { lanes } = sample.model;
  return lanes.names.map((name, id) => ({
    name,
    trips: sample.events((each) => each.lanes.trips[id]),
    fill: sample.share((each) => ratio(each.lanes.carried[id], each.lanes.trips[id] * lanes.capacity[id])),
    waitHours: sample.amount((each) => ratio(each.lanes.waitMinutes[id] / 60, each.lanes.carried[id])),
    truckBusy: sample.share((each) => each.lanes.truckBusy[id]),
    truckBlocked: sample.share((each) => each.lanes.truckBlocked[id]),
    truckFree: sample.share((each) => each.lanes.truckFree[id]),
  }));
}

/** Money for trips of units in rework; of a truck with others on board, their share of its trip. */
export const tripsAgain = (
  { trips, carried, carriedAgain }: Observation['lanes'],
  prices: readonly number[],
): number =>
  prices.reduce(
    (money, price, lane) =>
      carriedAgain[lane] > 0 ? money + (price * trips[lane] * carriedAgain[lane]) / carried[lane] : money,
    0,
  );
