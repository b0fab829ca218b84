/** Found defects and failed tests: what then. */
export const REPAIR = 0,
  SEND_BACK = 1,
  SCRAP = 2,
  CARRY = 3;

/**
 * State of a defect slot on a unit: none; present and not found; found and waiting for the step that mends
 * it; found and left for the next hold; passed on at the limit of a loop, noted too, but later inspections
 * may find it again; found at the inspection that is about to be done again, which is sure to find it.
 */
export const CLEAN = 0,
  OPEN = 1,
  FOUND = 2,
  NOTED = 3,
  PASSED = 4,
  KNOWN = 5;

/**
 * Defect slots: one kind of defect as made by one step. Those of failed tests that may be noted come last and
 * have kind -1.
 */
export interface SlotColumns {
  readonly count: number;
  readonly names: readonly string[];
  readonly kind: Int32Array;
  readonly step: Int32Array;
  readonly kindNames: readonly string[];
}

/** Chances by option: `base` unless a row (option, value) matches; the first that matches counts. */
export interface ChanceColumns {
  readonly base: Float64Array;
  readonly start: Int32Array;
  readonly option: Int32Array;
  readonly value: Int32Array;
  readonly chance: Float64Array;
}

/**
 * Work on what was found, by option: the draw of the first row (option, value) that matches, else the usual
 * one; -1 takes no time.
 */
export interface RepairTimeColumns {
  readonly usual: Int32Array;
  readonly start: Int32Array;
  readonly option: Int32Array;
  readonly value: Int32Array;
  readonly draw: Int32Array;
}

/** What follows a find. */
export interface ThenColumns {
  readonly count: number;
  readonly kind: Int32Array;
  /** Row of the times of repairs: there and then, or on a carried item at its hold; -1 of others. */
  readonly repairTime: Int32Array;
  /** Step the unit is sent back to, at or before the finding step; -1 unless SEND_BACK. */
  readonly target: Int32Array;
  /** First step of the way back to a target at another site; -1: none. */
  readonly way: Int32Array;
  /** Most times one unit is sent back by this row. */
  readonly limit: Int32Array;
  /** 1: scrapped at the limit; 0: passed on with the item open. */
  readonly scrapAtLimit: Uint8Array;
}

/**
 * How a step holds units: not; only those with noted items, others pass it over; noted ones, and it has
 * something to do for all.
 */
export const HOLD_NONE = 0,
  HOLD_NOTED = 1,
  HOLD_ALL = 2;

/** Columns of rules 8 to 10 by step, route and find. Ids and conventions as in `model.ts`. */
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
  /**
   * By step: HOLD_NONE, HOLD_NOTED or HOLD_ALL, and the row of the times of repairs for a noted item that
   * has none of its own, -1 none.
   */
  readonly hold: Uint8Array;
  readonly mendTime: Int32Array;
  /**
   * By step: the earlier inspection it is compared with, -1 none, and the extra work where the two differ.
   */
  readonly compareWith: Int32Array;
  readonly differDraw: Int32Array;
}
