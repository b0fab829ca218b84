import { crossFindings } from './checks.js';
import { tableReader } from './file/csv.js';
import { findingsOf } from './file/issues.js';
import { nameFindings } from './names.js';
import { scenarioSchema } from './schema.js';
import type { Finding } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { once } from './values/raw.js';
import { observedReader } from './values/time.js';

/**
 * Checks a scenario as data, with all that it includes in it; without a finding the scenario is sound. Its
 * assumptions are none.
 */
export function checked(
  value: unknown,
  readFile: (relativePath: string) => string,
): { readonly scenario: Scenario | undefined; readonly findings: readonly Finding[] } {
  // The schema is used a few times, so compiling it first would cost more than it saves.
  const result = schemaOf(readFile).safeParse(value, { jitless: true });
  const shape = result.success ? [] : findingsOf(result.error.issues, value);
  const names = nameFindings(value, shape);
  const cross = result.success ? crossFindings(result.data, names.length === 0) : [];
  return { scenario: result.success ? result.data : undefined, findings: [...shape, ...names, ...cross] };
}

/** One for all changes of a scenario: it takes longer to build than to ask. */
const schemaOf = once((readFile: (relativePath: string) => string) =>
  scenarioSchema(observedReader(readFile), tableReader(readFile, 'unit')),
);
