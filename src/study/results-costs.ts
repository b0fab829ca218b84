import type { Estimate } from './results.js';

/** Money per unit shipped and in all, over the time observed. */
export interface CostResult {
  readonly currency: string;
  readonly perUnit: Estimate;
  readonly total: Estimate;
  /** What has a price, in a fixed order; they add to the whole. */
  readonly parts: readonly CostPart[];
  /** What rework costs, within the above: people's time in it, send-backs and scrap. */
  readonly rework: ReworkCost;
}
export interface CostPart {
  readonly name: string;
  readonly perUnit: Estimate;
  /** Share of the mean cost of a unit. */
  readonly share: number;
}
export interface ReworkCost {
  /** Person-hours of work done again and of repairs, per unit shipped. */
  readonly hoursPerUnit: Estimate;
  readonly costPerUnit: Estimate;
}
