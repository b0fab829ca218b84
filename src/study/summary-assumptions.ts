import type { Scenario } from '../scenario/scenario.js';
import type { AssumptionResult } from './results-assumptions.js';

/** What the scenario says of where its values come from, in the order of the file. */
export function assumptions(scenario: Scenario): AssumptionResult[] {
  return scenario.assumptions.map(({ path, value, basis, note }) => ({
    path,
    value,
    basis,
    note: note ?? null,
  }));
}
