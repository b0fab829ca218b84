import type { Estimate } from './results.js';

/** A pulse line in `results.json`. Hours are working hours of the line. */
export interface PulseLineResult {
  readonly name: string;
  readonly stations: readonly string[];
  readonly taktHours: number;
  /** Moves with units on the line in the time observed, and mean hours from one move to the next. */
  readonly moves: Estimate;
  readonly hoursBetween: Estimate;
  /** Share of the moves that came later than the takt, and hours by which they were late, in all. */
  readonly late: Estimate;
  readonly lateHours: Estimate;
  /** The same by what was the last to be ready: each station, then room ahead of the line (`station` null). */
  readonly charged: readonly { readonly station: string | null; readonly lateHours: Estimate }[];
}
