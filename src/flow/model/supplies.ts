/** Bought-in parts (rule 12), in the order of the scenario. */
export interface SupplyColumns {
  readonly count: number;
  /** Resource id of the stock. */
  readonly resource: Int32Array;
  /**
   * A lot is ordered whenever stock and orders less the demand that waits are at or below this level, safety
   * stock included; -1: deliveries come by a plan.
   */
  readonly level: Int32Array;
  readonly lot: Int32Array;
  /** From order to arrival, minutes of the clock; -1 none. */
  readonly leadDraw: Int32Array;
  /**
   * Chance that a lot is late, the uniform draw that decides (-1: never late), and the draw of by how much.
   */
  readonly lateChance: Float64Array;
  readonly lateDraw: Int32Array;
  readonly lateByDraw: Int32Array;
  /** Delivery plans: times, sorted, and the units that come then; empty for a supply that is ordered. */
  readonly planTimes: readonly Float64Array[];
  readonly planLots: readonly Int32Array[];
}
