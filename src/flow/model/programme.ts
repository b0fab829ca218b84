import type { OrderColumns } from './orders.js';

/** How units are released: at given times; by a drawn interval; whenever the first station has room. */
export const RELEASE_TIMES = 0,
  RELEASE_ARRIVALS = 1,
  RELEASE_SATURATED = 2;

/** What is released, when, and what is observed of it. */
export interface ProgrammeColumns {
  readonly release: number;
  /**
   * For RELEASE_TIMES: release time of each unit, sorted; 0 for those of the opening, which come first.
   * Units are numbered from 1 in this order.
   */
  readonly times: Float64Array;
  /** For RELEASE_ARRIVALS: the interval. */
  readonly intervalDraw: number;
  readonly orders: OrderColumns;
  /**
   * Units in all; UNLIMITED for a steady-state run. The run ends when all have been shipped or scrapped.
   */
  readonly quantity: number;
  /** Hard end of the run, minutes; may be Infinity where quantity is finite. */
  readonly end: number;
  /** Start of observation, minutes; 0 for a programme that starts empty. */
  readonly warmUp: number;
  /** Edges of the time series, sorted; the first is <= warmUp; series have edges.length - 1 entries. */
  readonly bucketEdges: Float64Array;
  /** Days of 24 h from the start that are counted one by one; 0 for a steady-state run without outages. */
  readonly days: number;
}
