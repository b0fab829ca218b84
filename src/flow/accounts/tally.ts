import type { Model } from '../model/model.js';
import { Durations } from './bins.js';

/** Counts of nothing yet, one column for each name. */
export const columns = <Name extends string>(
  count: number,
  ...names: readonly Name[]
): Record<Name, Float64Array> =>
  Object.fromEntries(names.map((name) => [name, new Float64Array(count)])) as Record<Name, Float64Array>;

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
  /** Units shipped that had a due date, those of them shipped after it, and by how many minutes in all. */
  due = 0;
  late = 0;
  lateMinutes = 0;
  /** Of units shipped. */
  readonly leadTimes = new Durations();

  /** Items open on units shipped. */
  openAtShipping = 0;
  repairMinutes = 0;
  /**
   * By inspection: units, first visits and those of them passed, sent back, repaired, scrapped; items missed.
   */
  readonly inspections;
  /** By `then` row: a unit came to the limit of its loops. */
  readonly limitReached: Float64Array;
  /**
   * Steps that units sent back do again, as differences: units more than at the step before; a last row
   * behind all steps.
   */
  readonly doneAgain: Float64Array;
  /** By defect slot: created. */
  readonly created: Float64Array;
  readonly quality: QualityTally;

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
  /** Shipped by day of 24 h since the start; empty for a steady-state run without outages. */
  readonly shippedOn: Int32Array;
  /** Person-minutes engaged by crew * buckets + bucket. */
  readonly engagedIn: Float64Array;
  /** Minutes observed in a bucket. */
  readonly minutesIn: Float64Array;

  constructor(model: Model, inspections: number, holds: number) {
    const { thens, slots, lanes, steps, programme, resources, siteNames, stations } = model;
    const buckets = Math.max(0, programme.bucketEdges.length - 1);
    this.inspections = columns(
      inspections,
      'inspected',
      'firstVisits',
      'firstPasses',
      'sentBack',
      'repaired',
      'scrapped',
      'escaped',
    );
    this.limitReached = new Float64Array(thens.count);
    this.doneAgain = new Float64Array(steps.count + 1);
    this.created = new Float64Array(slots.count);
    this.quality = new QualityTally(model, inspections, holds);
    this.taken = new Float64Array(stations.count);
    this.changeovers = new Float64Array(stations.changeoverDraw.length);
    this.changeoverMinutes = new Float64Array(stations.changeoverDraw.length);
    this.enteredIn = new Int32Array(buckets);
    this.shippedIn = new Int32Array(buckets);
    this.unitMinutesIn = new Float64Array((siteNames.length + lanes.count) * buckets);
    this.shippedOn = new Int32Array(programme.days);
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
}

/** Counts of rules 8 to 10; slots and finds are in the order of the model's. */
export class QualityTally {
  /**
   * By slot: items made; gone because the unit had the same from another part; gone with a part that was
   * replaced; shipped open, never found and noted.
   */
  readonly made: Float64Array;
  readonly merged: Float64Array;
  readonly replaced: Float64Array;
  readonly shippedUnfound: Float64Array;
  readonly shippedNoted: Float64Array;
  /**
   * By find: items found for the first time (of tests: failures), and the repair work that followed, at a
   * hold too.
   */
  readonly found: Float64Array;
  readonly repairMinutes: Float64Array;
  /** By hold: units that came, that were held, noted items mended; unit-minutes held in the time observed. */
  readonly cameToHold: Float64Array;
  readonly held: Float64Array;
  readonly mended: Float64Array;
  readonly heldMinutes: Float64Array;
  /** By hold: from coming to release. */
  readonly released: readonly Durations[];
  /**
   * By inspection * 4 + 2 * (something found at the earlier one) + (something found here): units at the first
   * visits of both.
   */
  readonly compared: Float64Array;
  /** By inspection: extra work where the two differed, minutes. */
  readonly differMinutes: Float64Array;

  constructor({ slots: { count: slots }, steps: { findSlot } }: Model, inspections: number, holds: number) {
    this.made = new Float64Array(slots);
    this.merged = new Float64Array(slots);
    this.replaced = new Float64Array(slots);
    this.shippedUnfound = new Float64Array(slots);
    this.shippedNoted = new Float64Array(slots);
    this.found = new Float64Array(findSlot.length);
    this.repairMinutes = new Float64Array(findSlot.length);
    this.cameToHold = new Float64Array(holds);
    this.held = new Float64Array(holds);
    this.mended = new Float64Array(holds);
    this.heldMinutes = new Float64Array(holds);
    this.released = Array.from({ length: holds }, () => new Durations());
    this.compared = new Float64Array(4 * inspections);
    this.differMinutes = new Float64Array(inspections);
  }
}
