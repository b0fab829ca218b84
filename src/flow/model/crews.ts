/** Work that outlasts its shift: the next shift goes on with it, or it waits for its own. */
export const NEXT_SHIFT = 0,
  OWN_SHIFT = 1;

/**
 * Shifts of a crew in order of time; the windows of shift k in the calendar of the crew are firstWindow[k] ..
 * firstWindow[k + 1] - 1.
 */
export interface CrewShiftColumns {
  readonly firstWindow: Int32Array;
  /** Which shift of the calendar's day it is, from 0. */
  readonly position: Int32Array;
  /** People of shift k, if nobody is missing. */
  readonly people: Int32Array;
  /** NEXT_SHIFT or OWN_SHIFT. */
  readonly handOver: number;
  /** Chance that a person is missing for a shift; drawn uniformly by person. */
  readonly absence: number;
  /** The same of shift k, where it changes on a date; else left out. */
  readonly absences?: Float64Array;
  readonly absenceDraw: number;
}
