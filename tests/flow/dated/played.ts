import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { type Played, playModel } from '../run-yaml.js';

/** The scenario of a text that must be free of problems. */
export function scenarioOf(yaml: string): Scenario {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', () => '');
  if (scenario === undefined)
    throw new Error(`expected no problems, got ${JSON.stringify(problems)}\n${yaml}`);
  return scenario;
}

/** `after`, and up to a day `before`. */
export const dated = (after: string, before: string, until: string): Scenario => ({
  ...scenarioOf(after),
  before: [{ until, scenario: scenarioOf(before) }],
});

/** One replication of a text in which `is` stands in the place of `was` from a day on. */
export function changed(yaml: string, was: string, is: string, until: string): Played {
  if (!yaml.includes(was)) throw new Error(`expected "${was}" in the text`);
  return playModel(compile(dated(yaml.replace(was, is), yaml, until)), 'flow', 1);
}
