import type { Scenario } from '../../scenario/types/scenario.js';
import type { AssumptionResult } from './results.js';

/** Values of which the scenario says where they come from, as in the file. */
export const assumptionsOf = ({ assumptions }: Scenario): AssumptionResult[] =>
  assumptions.map(({ path, words, value, basis, note, measured }) => ({
    ...{ path, words, value, basis },
    note: note ?? null,
    ...(measured && { measured }),
  }));
