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
