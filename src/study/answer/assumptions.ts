import type { Basis, Scenario } from '../../scenario/types/scenario.js';

/** A value of the scenario of which the planner says where it comes from. */
export interface AssumptionResult {
  /** As in messages: `route[3].work`. */
  readonly path: string;
  /** As written, on one line. */
  readonly value: string;
  readonly basis: Basis;
  readonly note: string | null;
}

/** What the scenario says of where its values come from, in the order of the file. */
export function assumptions(scenario: Scenario): AssumptionResult[] {
  return scenario.assumptions.map(({ path, value, basis, note }) => ({
    path,
    value,
    basis,
    note: note ?? null,
  }));
}
