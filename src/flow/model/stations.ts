/** Stations of all sites: places, the buffer ahead, changeovers and lots. */
export interface StationColumns {
  readonly count: number;
  readonly names: readonly string[];
  readonly site: Int32Array;
  readonly places: Int32Array;
  /** Spaces in the buffer ahead. */
  readonly buffer: Int32Array;
  /** Spaces ahead for units sent back; -1: they share the buffer. */
  readonly reworkBuffer: Int32Array;
  /** Calendar in which the station is on shift; -1 always. */
  readonly calendar: Int32Array;
  /**
   * 1: an arrival bank of a lane: places without equipment, in which a unit only waits for its next
   * station.
   */
  readonly isBank: Uint8Array;
  /**
   * Option whose change between consecutive units on a place costs a changeover; -1: none, or it is the
   * setting of the step. What a step sets a place up for stands in its `settingTable`.
   */
  readonly changeoverOption: Int32Array;
  /** Values of that option, or settings of the steps there; empty: no changeovers. */
  readonly changeoverValues: readonly (readonly string[])[];
  /** 1: a changeover passes by itself, day and night, and nobody is claimed for it. */
  readonly changeoverAlone: Uint8Array;
  /**
   * Draws by value before * values + value after, -1 no changeover; ragged, empty where there is no option.
   */
  readonly changeoverStart: Int32Array;
  readonly changeoverDraw: Int32Array;
  /**
   * Batches by value: most units (lots, at a station with lots) of one value in a row, 0 = in order; longest
   * wait of the first in order, minutes, may be Infinity.
   */
  readonly batchMost: Int32Array;
  readonly batchWait: Float64Array;
  /** Lots: `lotMost` 0 = units are taken one by one. */
  readonly lotLeast: Int32Array;
  readonly lotMost: Int32Array;
  /**
   * Longest wait of the first unit of a lot before it starts with fewer than most, minutes; 0: it starts as
   * soon as the least are there.
   */
  readonly lotWait: Float64Array;
}

/**
 * Steps side by side. A group has a step of its own, without work, on which the unit takes its place; the
 * steps done in it follow right behind and are not on the unit's way themselves.
 */
export interface SideBySideColumns {
  /** By step: the group that it is done in; -1. */
  readonly group: Int32Array;
  /**
   * By station: the most steps of one group there, and the most people in one place (UNLIMITED: no limit).
   */
  readonly most: Int32Array;
  readonly people: Int32Array;
}

/** Pulse lines in the compiled model, see `model.ts`. */
export interface PulseLineColumns {
  readonly count: number;
  readonly names: readonly string[];
  /** Stations in order, one place each. */
  readonly stationStart: Int32Array;
  readonly station: Int32Array;
  /** Least time from one move to the next, minutes of `calendar`, that of the stations; -1 always. */
  readonly takt: Float64Array;
  readonly calendar: Int32Array;
}
