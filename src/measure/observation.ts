import type { Stuck } from '../flow/gridlock.js';
import type { BoothStay } from '../flow/booth-log.js';
import type { QualityObservation } from './observation-quality.js';
import type { CrewTime } from './crew-time.js';

/**
 * What was observed in one replication. Plain data that can be sent between workers. Times are minutes since the
 * programme's start, shares 0..1 of the observed time, arrays in the order of the model's ids.
 */
export interface Observation {
  readonly replication: number;
  readonly outcome: 'finished' | 'ended' | 'gridlock';
  /** When the run ended, and the length observed. */
  readonly endedAt: number;
  readonly minutes: number;
  readonly entered: number;
  readonly shipped: number;
  readonly scrapped: number;
  readonly openAtShipping: number;
  /** Units shipped that had a due date, those of them shipped after it, and by how many minutes in all. */
  readonly due: number;
  readonly late: number;
  readonly lateMinutes: number;
  /** Mean work in process, and by location (sites, then lanes). */
  readonly wip: number;
  readonly wipByLocation: Float64Array;
  /** Lead time of units shipped, minutes; NaN if none was. */
  readonly leadMean: number;
  readonly leadP50: number;
  readonly leadP90: number;
  readonly leadP95: number;
  readonly leadLeast: number;
  readonly leadGreatest: number;
  /** Counts in bins `leadFirstBin`, +1, .. of `tally.ts`. */
  readonly leadFirstBin: number;
  readonly leadBins: Int32Array;
  /** Shares by station * states + state. */
  readonly stationShares: Float64Array;
  /** By step: visits begun. */
  readonly stepVisits: Float64Array;
  /** By destination (stations, then lanes): mean in the buffer, share of time by level, from `bufferLevelsFrom` on, up to the highest level that occurred. */
  readonly bufferMean: Float64Array;
  readonly bufferLevels: Float64Array;
  readonly bufferLevelsFrom: Int32Array;
  /** By destination, over the whole run: 1 if a unit ever found no room there; most units in its spaces at a time, Infinity for `LEVELS` - 1 and more. */
  readonly room: { readonly shutOut: Uint8Array; readonly most: Float64Array };
  /** By crew: engaged person-time over time on shift. */
  readonly crewBusy: Float64Array;
  /** By supply: mean on order (of a delivery plan: overdue), least stock, lots received and those of them late, waits for want of it and their minutes. */
  readonly supplies: {
    readonly onOrder: Float64Array;
    readonly least: Float64Array;
    readonly lots: Float64Array;
    readonly lateLots: Float64Array;
    readonly waits: Float64Array;
    readonly waitMinutes: Float64Array;
  };
  /** Person-minutes of crews on shift, see `crew-time.ts`; and engaged, by crew * buckets + bucket. */
  readonly crewTime: CrewTime;
  readonly crewEngagedIn: Float64Array;
  /** By overtime rule: how often it was looked at, and worked; minutes worked by rule * buckets + bucket. */
  readonly overtimeRules: {
    readonly looked: Float64Array;
    readonly worked: Float64Array;
    readonly minutesIn: Float64Array;
  };
  /** By resource: mean stock (of carriers: free) and share of time without stock; 0 for crews. */
  readonly stockMean: Float64Array;
  readonly stockOut: Float64Array;
  /** By carriers and teams: mean number with units and on the way back, holds that ended. */
  readonly kept: { readonly held: Float64Array; readonly coming: Float64Array; readonly ended: Float64Array };
  readonly inspections: {
    readonly inspected: Float64Array;
    readonly firstVisits: Float64Array;
    readonly firstPasses: Float64Array;
    readonly sentBack: Float64Array;
    readonly repaired: Float64Array;
    readonly scrapped: Float64Array;
    readonly escaped: Float64Array;
  };
  /** By station with changeovers: units that took a place. By pair of values, as in the model: changeovers, and their work. */
  readonly taken: Float64Array;
  readonly changeovers: Float64Array;
  readonly changeoverMinutes: Float64Array;
  /** By station; empty but in the first replication and at stations with changeovers. */
  readonly stays: readonly (readonly BoothStay[])[];
  readonly repairMinutes: number;
  readonly limitReached: Float64Array;
  readonly created: Float64Array;
  readonly quality: QualityObservation;
  /** By crew: person-minutes of work done again and of repairs. */
  readonly reworkMinutes: Float64Array;
  readonly lanes: {
    readonly trips: Float64Array;
    readonly carried: Float64Array;
    readonly waitMinutes: Float64Array;
    readonly truckBusy: Float64Array;
    readonly truckBlocked: Float64Array;
    readonly truckFree: Float64Array;
  };
  /** Resources that can be a bottleneck: stations, crews, lanes, carriers. */
  readonly utilisation: Float64Array;
  /** In the same order: share of the time observed as the sole momentary bottleneck, and as a shifting one; null where it was not followed. */
  readonly momentary: { readonly sole: Float64Array; readonly shifting: Float64Array } | null;
  /** Mean units inside by equal part of a steady-state run from its empty start; null where that was not followed. */
  readonly startUp: Float64Array | null;
  /** Mean active period, minutes; 0 if there was none. */
  readonly activePeriod: Float64Array;
  /** By bucket. */
  readonly enteredIn: Int32Array;
  readonly shippedIn: Int32Array;
  readonly minutesIn: Float64Array;
  /** Mean work in process by location * buckets + bucket. */
  readonly wipIn: Float64Array;
  /** By build number - 1, NaN where it did not happen; empty without a quantity. */
  readonly enteredAt: Float64Array;
  readonly shippedAt: Float64Array;
  readonly optionsOf: Uint8Array;
  /** When it is due; Infinity where it is not; empty where nothing is due. */
  readonly dueAt: Float64Array;
  /** By station: failures, repairs ended, their minutes by the clock in all and at most. */
  readonly failures: {
    readonly count: Float64Array;
    readonly repairs: Float64Array;
    readonly minutes: Float64Array;
    readonly longest: Float64Array;
  };
  /** By outage: units open (released and not yet out) when it began and the time when no more were open again, NaN where it did not come so far; open units by day of the watched one. */
  readonly outages: {
    readonly openUnits: Float64Array;
    readonly recoveredAt: Float64Array;
    readonly openByDay: Float64Array;
  };
  /** By pulse line: moves with units on it, working minutes between them, moves later than the takt and by how much: by station charged, then for want of room ahead. */
  readonly pulseLines: readonly {
    readonly moves: number;
    readonly minutesBetween: number;
    readonly late: number;
    readonly lateMinutes: Float64Array;
  }[];
  readonly stuck: readonly Stuck[];
}
