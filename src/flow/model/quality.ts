/**
 * How a step holds units: not; only those with noted items, others pass it over; noted ones, and it has
 * something to do for all.
 */
export const HOLD_NONE = 0,
  HOLD_NOTED = 1,
  HOLD_ALL = 2;

/** Columns of rules 8 to 10 beside those of the steps. Ids and conventions as in `model.ts`. */
export interface QualityColumns {
  /**
   * By route: slots whose items its sub-assemblies may bring to whatever they join, those of sub-assemblies
   * in them included.
   */
  readonly carriedStart: Int32Array;
  readonly carriedSlot: Int32Array;
  /**
   * By find: the slot under which what it found is noted and left open; that of the find, of a failed test
   * one of its own; -1 never noted.
   */
  readonly findNote: Int32Array;
  /** By step: HOLD_NONE, HOLD_NOTED or HOLD_ALL, and the work on a noted item that has no time of its own. */
  readonly hold: Uint8Array;
  readonly mendDraw: Int32Array;
  /**
   * By step: the earlier inspection it is compared with, -1 none, and the extra work where the two differ.
   */
  readonly compareWith: Int32Array;
  readonly differDraw: Int32Array;
}
