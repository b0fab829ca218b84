import type { Model } from '../model/model.js';
import { BIN_COUNT, binOf } from './bins.js';
import { QualityTally } from './quality-tally.js';

/**
 * Counts and sums of one replication that are not accounts of time in a state. All start afresh at the end of
 * warm-up.
 */
export class Tally {
  entered = 0;
  shipped = 0;
  scrapped = 0;
  /**
   * Sum of time in the system over units inside at any time of the observation, minutes, for Little's
   * identity.
   */
  unitMinutes = 0;
  leadSum = 0;
  /** Units shipped that had a due date, those of them shipped after it, and by how many minutes in all. */
  due = 0;
  late = 0;
  lateMinutes = 0;
  leadMin = Infinity;
  leadMax = 0;
  readonly leadBins = new Int32Array(BIN_COUNT);

  /** By inspection. */
  readonly inspected: Float64Array;
  readonly firstVisits: Float64Array;
  readonly firstPasses: Float64Array;
  readonly sentBack: Float64Array;
  readonly repaired: Float64Array;
  readonly scrappedAt: Float64Array;
  readonly escaped: Float64Array;
  /** By `then` row: a unit came to the limit of its loops. */
  readonly limitReached: Float64Array;
  /** Items open on units shipped. */
  openAtShipping = 0;
  repairMinutes = 0;
  /** By defect slot: created. */
  readonly created: Float64Array;

  /**
   * By station with changeovers: units that took a place. By pair of values, as `changeoverDraw`: changeovers
   * begun, and their work.
   */
  readonly taken: Float64Array;
  readonly changeovers: Float64Array;
  readonly changeoverMinutes: Float64Array;

  /** Series by bucket: released (entered), shipped; minutes of unit-time by location * buckets + bucket. */
  readonly enteredIn: Int32Array;
  readonly shippedIn: Int32Array;
  readonly unitMinutesIn: Float64Array;
  /** Person-minutes engaged by crew * buckets + bucket. */
  readonly engagedIn: Float64Array;
  /** Minutes observed in a bucket. */
  readonly minutesIn: Float64Array;

  readonly quality: QualityTally;

  constructor(model: Model, inspections: number, holds: number) {
    const { slots, thens, lanes, programme, resources, siteNames, stations } = model;
    const buckets = Math.max(0, programme.bucketEdges.length - 1);
    this.inspected = new Float64Array(inspections);
    this.firstVisits = new Float64Array(inspections);
    this.firstPasses = new Float64Array(inspections);
    this.sentBack = new Float64Array(inspections);
    this.repaired = new Float64Array(inspections);
    this.scrappedAt = new Float64Array(inspections);
    this.escaped = new Float64Array(inspections);
    this.limitReached = new Float64Array(thens.count);
    this.created = new Float64Array(slots.count);
    this.taken = new Float64Array(stations.count);
    this.changeovers = new Float64Array(stations.changeoverDraw.length);
    this.changeoverMinutes = new Float64Array(stations.changeoverDraw.length);
    this.quality = new QualityTally(model, inspections, holds);
    this.enteredIn = new Int32Array(buckets);
    this.shippedIn = new Int32Array(buckets);
    this.unitMinutesIn = new Float64Array((siteNames.length + lanes.count) * buckets);
    this.engagedIn = new Float64Array(resources.crews * buckets);
    this.minutesIn = new Float64Array(buckets);
  }

  /** A unit with a due date is shipped so many minutes after it; before it, if negative. */
  countLateness(minutes: number): void {
    this.due++;
    if (minutes <= 0) return;
    this.late++;
    this.lateMinutes += minutes;
  }

  countLeadTime(minutes: number): void {
    this.leadSum += minutes;
    if (minutes < this.leadMin) this.leadMin = minutes;
    if (minutes > this.leadMax) this.leadMax = minutes;
    this.leadBins[binOf(minutes)]++;
  }
}
