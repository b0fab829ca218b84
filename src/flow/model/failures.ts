/** Rule 13 in the compiled model, see `model.ts`: how equipment fails, and outages that are dated. */

/**
 * One row a way to fail; a station, or equipment that stations share, may have several. Each place has
 * equipment of its own, a station with lots one for all.
 */
export interface FailureColumns {
  readonly count: number;
  /** Station, or -1; resource of shared equipment, or -1. */
  readonly station: Int32Array;
  readonly resource: Int32Array;
  /**
   * 1: the time between failures is counted by the clock; 0: in the minutes in which a place is at its task.
   */
  readonly byClock: Uint8Array;
  readonly everyDraw: Int32Array;
  /** -1: no time. */
  readonly repairDraw: Int32Array;
  /** Calendar in which repairs go on; -1 always. */
  readonly repairCalendar: Int32Array;
}

export interface OutageColumns {
  readonly count: number;
  readonly names: readonly string[];
  /** Minutes since the programme's start, from <= to, both in the time of the run or after it. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** Stations of which all places are down. */
  readonly stationStart: Int32Array;
  readonly station: Int32Array;
  /** Lanes from which no truck departs. */
  readonly laneStart: Int32Array;
  readonly lane: Int32Array;
}
