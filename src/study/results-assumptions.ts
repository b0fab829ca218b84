import type { Basis } from '../scenario/assumptions.js';

/** A value of the scenario of which the planner says where it comes from. */
export interface AssumptionResult {
  /** As in messages: `route[3].work`. */
  readonly path: string;
  /** As written, on one line. */
  readonly value: string;
  readonly basis: Basis;
  readonly note: string | null;
}
