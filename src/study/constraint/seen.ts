import type { Observation } from '../../measure/observe.js';
import { sumOf } from '../statistics/sums.js';

/** What is read of replications to tell where units wait: means over them. */
export interface Seen {
  /** As in `Observation`: by station * states + state; by destination; by step; by crew; by resource. */
  readonly stationShares: Float64Array;
  readonly bufferMean: Float64Array;
  readonly stepVisits: Float64Array;
  readonly crewBusy: Float64Array;
  readonly stockOut: Float64Array;
  /** By supply: requests that lack it, mean over the time observed. */
  readonly supplyLacked: Float64Array;
  /** By equipment: requests that lack it, mean over the time observed. */
  readonly equipmentLacked: Float64Array;
  /** By lane. */
  readonly carried: Float64Array;
  readonly truckBusy: Float64Array;
  readonly truckBlocked: Float64Array;
  readonly truckFree: Float64Array;
}

/** @param observations one at least */
export function seenIn(observations: readonly Observation[]): Seen {
  const summed = (of: (seen: Observation) => Float64Array): Float64Array =>
      observations.map(of).reduce((sums, values) => sums.map((sum, i) => sum + values[i])),
    mean = (of: (seen: Observation) => Float64Array): Float64Array =>
      summed(of).map((sum) => sum / observations.length),
    minutes = sumOf(observations, (seen) => seen.minutes);
  return {
    stationShares: mean((seen) => seen.stationShares),
    bufferMean: mean((seen) => seen.bufferMean),
    stepVisits: mean((seen) => seen.stepVisits),
    crewBusy: mean((seen) => seen.crewBusy),
    stockOut: mean((seen) => seen.stockOut),
    supplyLacked: summed((seen) => seen.supplies.waitMinutes).map((sum) => sum / minutes),
    equipmentLacked: summed((seen) => seen.equipment.waitMinutes).map((sum) => sum / minutes),
    carried: mean(({ lanes }) => lanes.carried),
    truckBusy: mean(({ lanes }) => lanes.truckBusy),
    truckBlocked: mean(({ lanes }) => lanes.truckBlocked),
    truckFree: mean(({ lanes }) => lanes.truckFree),
  };
}
