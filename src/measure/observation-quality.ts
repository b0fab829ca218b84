/** Rules 8 to 10 in one replication. Columns by slot and find are in the order of the model's; see `flow/tally-quality.ts`. */
export interface QualityObservation {
  /** By slot: items made; one with another of the same slot; gone with a part replaced; shipped open: never found, found and noted. */
  readonly made: Float64Array;
  readonly merged: Float64Array;
  readonly replaced: Float64Array;
  readonly shippedUnfound: Float64Array;
  readonly shippedNoted: Float64Array;
  /** By find: items found for the first time, and minutes of repair that followed. */
  readonly found: Float64Array;
  readonly repairMinutes: Float64Array;
  /** By hold step: units that came, were held, items mended; mean units held; time from coming to release, minutes, NaN if none was released. */
  readonly cameToHold: Float64Array;
  readonly held: Float64Array;
  readonly mended: Float64Array;
  readonly inHold: Float64Array;
  readonly holdMean: Float64Array;
  readonly holdP95: Float64Array;
  /** By inspection * 4 + 2 * (something found at the earlier one) + (something found here): units at the first visits of both. */
  readonly compared: Float64Array;
  /** By inspection: extra work where the two differed, minutes. */
  readonly differMinutes: Float64Array;
}
