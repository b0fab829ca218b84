import type { Model } from '../model/model.js';
import { BIN_COUNT, binOf } from './bins.js';

/** Counts of rules 8 to 10, in one replication. */
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
  /**
   * By hold: units that came, that were held, noted items mended; units released and the time from coming to
   * release; unit-minutes held in the time observed.
   */
  readonly cameToHold: Float64Array;
  readonly held: Float64Array;
  readonly mended: Float64Array;
  readonly releasedUnits: Float64Array;
  readonly releasedMinutes: Float64Array;
  readonly releasedMost: Float64Array;
  readonly releasedBins: readonly Int32Array[];
  readonly heldMinutes: Float64Array;
  /**
   * By inspection * 4: first visits compared with an earlier inspection: nothing found at both, here only,
   * there only, something at both.
   */
  readonly compared: Float64Array;
  /** By inspection: extra work where the two differed. */
  readonly differMinutes: Float64Array;

  constructor({ slots, steps }: Model, inspections: number, holds: number) {
    const bySlot = (): Float64Array => new Float64Array(slots.count),
      byFind = (): Float64Array => new Float64Array(steps.findSlot.length),
      byHold = (): Float64Array => new Float64Array(holds);
    this.made = bySlot();
    this.merged = bySlot();
    this.replaced = bySlot();
    this.shippedUnfound = bySlot();
    this.shippedNoted = bySlot();
    this.found = byFind();
    this.repairMinutes = byFind();
    this.cameToHold = byHold();
    this.held = byHold();
    this.mended = byHold();
    this.releasedUnits = byHold();
    this.releasedMinutes = byHold();
    this.releasedMost = byHold();
    this.releasedBins = Array.from({ length: holds }, () => new Int32Array(BIN_COUNT));
    this.heldMinutes = byHold();
    this.compared = new Float64Array(4 * inspections);
    this.differMinutes = new Float64Array(inspections);
  }

  /** @param minutes from coming to release @param observed the part of it in the time observed */
  released(hold: number, minutes: number, observed: number): void {
    this.releasedUnits[hold]++;
    this.releasedMinutes[hold] += minutes;
    this.heldMinutes[hold] += observed;
    if (minutes > this.releasedMost[hold]) this.releasedMost[hold] = minutes;
    this.releasedBins[hold][binOf(minutes)]++;
  }
}
