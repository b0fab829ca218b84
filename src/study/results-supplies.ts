import type { Estimate } from './results.js';

/** One bought-in part over the time observed. */
export interface SupplyResult {
  readonly name: string;
  readonly site: string;
  readonly by: 'reorder' | 'deliveries';
  readonly stock: Estimate;
  /** Share of time without stock. */
  readonly out: Estimate;
  /** Least stock. */
  readonly least: Estimate;
  readonly lots: Estimate;
  readonly lateLots: Estimate;
  /** Mean units on order; of a plan of deliveries, overdue. */
  readonly onOrder: Estimate;
  /** Times that a unit or sub-assembly had to wait for it, and the mean length of these waits by the clock. */
  readonly waits: Estimate;
  readonly waitHours: Estimate;
}
