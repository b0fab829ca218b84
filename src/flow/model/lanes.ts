/** When trucks leave. */
export const LEAVE_FULL = 0,
  LEAVE_TIMETABLE = 1,
  LEAVE_FULL_OR_WAIT = 2;

/** Lanes between two sites: trucks, docks, times and the rule of departure. */
export interface LaneColumns {
  readonly count: number;
  readonly names: readonly string[];
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly trucks: Int32Array;
  readonly capacity: Int32Array;
  readonly loadDraw: Int32Array;
  readonly driveDraw: Int32Array;
  readonly unloadDraw: Int32Array;
  readonly returnDraw: Int32Array;
  /**
   * Calendars of loading (site of departure), driving and return, unloading (site of arrival); -1 always.
   */
  readonly loadCalendar: Int32Array;
  readonly driveCalendar: Int32Array;
  readonly unloadCalendar: Int32Array;
  readonly rule: Int32Array;
  /** Longest wait of the first waiting unit, minutes; for LEAVE_FULL_OR_WAIT. */
  readonly wait: Float64Array;
  /** Sorted times at which loading begins, for LEAVE_TIMETABLE. */
  readonly timetable: readonly Float64Array[];
  /** Spaces of the bank ahead of loading. */
  readonly bank: Int32Array;
  /**
   * 1: an arrival bank without a limit. It is no station: a unit without room ahead stands in no place. One
   * with a limit is a station.
   */
  readonly endless: Uint8Array;
  readonly docksFrom: Int32Array;
  readonly docksTo: Int32Array;
}
