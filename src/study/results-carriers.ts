import type { Estimate } from './results.js';

export interface CarriersResult {
  readonly name: string;
  /** Site in which they are claimed; with that in which they are given back, if it is another. */
  readonly site: string;
  readonly count: number;
  /** Mean numbers with units, on the way back, and free; they add to the count. */
  readonly inUse: Estimate;
  readonly comingBack: Estimate;
  readonly free: Estimate;
  /** Share of time with none free. */
  readonly noneFree: Estimate;
  /** Mean time with one unit, the way back not included (Little 1961: time with units over holds that ended). */
  readonly holdHours: Estimate;
}
export interface TeamResult {
  readonly name: string;
  readonly site: string;
  readonly crew: string;
  readonly people: number;
  /** Mean number of such teams with units. */
  readonly inUse: Estimate;
  readonly holdHours: Estimate;
}
