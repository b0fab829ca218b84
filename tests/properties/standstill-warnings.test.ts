import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GRIDLOCK, simulate } from '../../src/flow/engine.js';
import { prepare } from '../../src/flow/plan.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { standstillWarnings } from '../../src/study/standstill/warnings.js';
import { crowdedScenario, toCrowdedYaml } from './crowded-scenario.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;

/** Of scenarios drawn at random, how many stand still in a replication, are warned of, both, neither. */
function counted<Drawn>(scenarios: fc.Arbitrary<Drawn>, yamlOf: (drawn: Drawn) => string, numRuns: number) {
  const seen = { stood: 0, warned: 0, both: 0, neither: 0 },
    missed: string[] = [];
  for (const drawn of fc.sample(scenarios, { seed: 20270301, numRuns })) {
    const yaml = yamlOf(drawn),
      { scenario } = readScenario(yaml, 'drawn.yaml', () => '');
    if (scenario === undefined) continue;
    const model = compile(scenario),
      plan = prepare(model),
      isWarned = standstillWarnings(model, scenario).length > 0,
      stands = [1, 2].some((replication) => simulate(plan, 'warned', replication).outcome === GRIDLOCK);
    if (stands) seen.stood++;
    if (isWarned) seen.warned++;
    if (stands && isWarned) seen.both++;
    if (!stands && !isWarned) seen.neither++;
    if (stands && !isWarned) missed.push(yaml);
  }
  return { ...seen, missed };
}

// A circle of waits is needed for a standstill, so a build that stands still without a warning has a way of
// waiting that the circles do not know. The other bound is on warnings that come to nothing.
describe('scenarios that stand still are warned of', () => {
  it(
    'of small ones all, and most of the others are not',
    () => {
      const { stood, warned, both, neither, missed } = counted(randomScenario, (drawn) => toYaml(drawn), 150);
      expect(missed).toEqual([]);
      expect(stood).toBeGreaterThan(8);
      expect(neither).toBeGreaterThan(70);
      expect(both / warned).toBeGreaterThan(0.35);
    },
    SLOW,
  );

  it(
    'on crowded floors all',
    () => {
      const { stood, both, warned, missed } = counted(crowdedScenario, toCrowdedYaml, 80);
      expect(missed).toEqual([]);
      expect(stood).toBeGreaterThan(30);
      expect(both / warned).toBeGreaterThan(0.4);
    },
    SLOW,
  );
});
