import type { Observation } from '../../measure/observe.js';
import type { Folded, Sample } from '../sample/sample.js';

/** What is read of replications to tell where units wait, as sums over them. */
export interface Seen {
  readonly replications: number;
  /** Minutes observed. */
  readonly minutes: number;
  /** As in `Observation`: by station * states + state; by destination; by step; by crew; by resource. */
  readonly stationShares: Float64Array;
  readonly bufferMean: Float64Array;
  readonly stepVisits: Float64Array;
  readonly crewBusy: Float64Array;
  readonly stockOut: Float64Array;
  /** By supply: minutes of requests that lacked it. */
  readonly supplyWait: Float64Array;
  /** By lane. */
  readonly carried: Float64Array;
  readonly truckBusy: Float64Array;
  readonly truckBlocked: Float64Array;
  readonly truckFree: Float64Array;
}

const columnsOf = (seen: Observation): Omit<Seen, 'replications' | 'minutes'> => ({
  stationShares: seen.stationShares,
  bufferMean: seen.bufferMean,
  stepVisits: seen.stepVisits,
  crewBusy: seen.crewBusy,
  stockOut: seen.stockOut,
  supplyWait: seen.supplies.waitMinutes,
  carried: seen.lanes.carried,
  truckBusy: seen.lanes.truckBusy,
  truckBlocked: seen.lanes.truckBlocked,
  truckFree: seen.lanes.truckFree,
});

/** Sums over the replications of a sample; null before the first. */
export const seenIn = (sample: Sample): Folded<Seen | null> =>
  sample.fold<Seen | null>(null, (known, each) => {
    const { minutes } = each,
      columns = columnsOf(each);
    return known === null
      ? { replications: 1, minutes, ...columns }
      : {
          replications: known.replications + 1,
          minutes: known.minutes + minutes,
          stationShares: added(known.stationShares, columns.stationShares),
          bufferMean: added(known.bufferMean, columns.bufferMean),
          stepVisits: added(known.stepVisits, columns.stepVisits),
          crewBusy: added(known.crewBusy, columns.crewBusy),
          stockOut: added(known.stockOut, columns.stockOut),
          supplyWait: added(known.supplyWait, columns.supplyWait),
          carried: added(known.carried, columns.carried),
          truckBusy: added(known.truckBusy, columns.truckBusy),
          truckBlocked: added(known.truckBlocked, columns.truckBlocked),
          truckFree: added(known.truckFree, columns.truckFree),
        };
  });

const added = (sums: Float64Array, values: Float64Array): Float64Array =>
  sums.map((sum, i) => sum + (values[i] ?? 0));
