/**
 * What stays with a unit over several steps of one route: carriers first, then teams. The unit claims it at
 * the first of the steps `from` .. `to` that it does and gives it back when it has gone on to a step beyond
 * `to`.
 */
export interface CompanionColumns {
  /** 31 at most: a unit keeps them as bits. */
  readonly count: number;
  readonly names: readonly string[];
  /** The carriers, or the crew of a team. */
  readonly resource: Int32Array;
  /** Of the resource, for one unit: 1 carrier, the people of a team. */
  readonly amount: Int32Array;
  /** Steps of one route, both included. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The way back of a carrier, and the calendar in which it goes on (-1 always); draw -1: free at once. */
  readonly returnDraw: Int32Array;
  readonly returnCalendar: Int32Array;
}
