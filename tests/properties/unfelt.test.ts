import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import type { Model } from '../../src/flow/model/model.js';
import { prepare } from '../../src/flow/plan.js';
import { type Observation, observe } from '../../src/measure/observe.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { reliefsOf } from '../../src/scenario/reliefs/kinds.js';
import type { Costs } from '../../src/scenario/types/costs.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import { unfelt } from '../../src/study/felt/unfelt.js';
import { unitCost } from '../../src/study/sections/costs.js';
import { crowdedScenario, toCrowdedYaml } from './crowded-scenario.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 400_000;
const play = (model: Model, seed: string, replication: number): Observation =>
  observe(simulate(prepare(model), seed, replication), replication);

const readYaml = (yaml: string): Scenario => {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return { ...scenario, costs: pricesOf(scenario) };
};

/** Whatever there may be more of has a price. */
function pricesOf({ lanes, carriers, sites }: Scenario): Costs {
  const days = (names: readonly string[], day: number) =>
    Object.fromEntries(names.map((name) => [name, { day, trip: 5 }]));
  return {
    currency: 'EUR',
    people: { default: { hour: 40, overtimeHour: 60 } },
    trucks: days(Object.keys(lanes), 90),
    carriers: days(Object.keys(carriers), 3),
    equipment: days(
      Object.values(sites).flatMap(({ equipment }) => Object.keys(equipment ?? {})),
      45,
    ),
    ...{ unitDay: 11, sendBack: 3, scrap: 70, spaceDay: 2, changeovers: {}, supplies: {} },
  };
}

/** What studies compare, and all that follows from the order of events. */
const told = ({
  outcome,
  entered,
  shipped,
  scrapped,
  endedAt,
  shippedAt,
  enteredAt,
  shippedIn,
  shippedOn,
  stepVisits,
  wip,
  leadMean,
}: Observation) => ({
  ...{ outcome, entered, shipped, scrapped, endedAt, shippedAt, enteredAt, shippedIn, shippedOn },
  ...{ stepVisits, wip, leadMean },
});

interface Tried {
  readonly text: string;
  readonly kind: string;
  readonly scenario: Scenario;
}

/** The small changes of a scenario that can be compiled. */
const triedOf = (scenario: Scenario): Tried[] =>
  reliefsOf(scenario).flatMap(({ text, kind, change }) => {
    try {
      const changed = change(scenario);
      compile(changed);
      return [{ text, kind, scenario: changed }];
    } catch (error) {
      if (error instanceof RangeError) return [];
      throw error;
    }
  });

/** Runs whatever would not be run, and counts by kind how often it was told not to matter, and how often it might. */
function auditOne(scenario: Scenario, seed: string, r: number, counts: Map<string, [number, number]>): void {
  const base = compile(scenario),
    seen = play(base, seed, r);
  for (const { text, kind, scenario: changed } of triedOf(scenario)) {
    const model = compile(changed),
      proof = unfelt(base, model),
      count = counts.get(kind) ?? [0, 0];
    counts.set(kind, count);
    if (proof === null) continue;
    if (!proof.leaves(seen)) {
      count[1]++;
      continue;
    }
    count[0]++;
    const ran = play(model, seed, r);
    expect(told(ran), text).toEqual(told(seen));
    const cost = unitCost(changed, model);
    // Times are added up in other pieces where a run is looked at at other instants.
    if (cost !== null && seen.shipped > 0)
      expect(Math.abs(cost(proof.changed(seen)) / cost(ran) - 1), `cost with ${text}`).toBeLessThan(1e-12);
  }
}

describe('a replication in which nobody felt a change', () => {
  it(
    'goes just so when it is run with the change',
    () => {
      const counts = new Map<string, [number, number]>(),
        replication = fc.integer({ min: 1, max: 1_000_000 });
      fc.assert(
        fc.property(randomScenario, replication, (drawn, r) => {
          auditOne(readYaml(toYaml(drawn)), 'unfelt', r, counts);
        }),
        { seed: 20271129, numRuns: 30 },
      );
      fc.assert(
        fc.property(crowdedScenario, replication, (drawn, r) => {
          auditOne(readYaml(toCrowdedYaml(drawn)), 'unfelt', r, counts);
        }),
        { seed: 20271129, numRuns: 12 },
      );
      // Worth something only where both happen; of 210 such scenarios 2,365 changes in all were not felt.
      for (const kind of ['person', 'place', 'space', 'truck', 'carrier', 'equipment']) {
        const [unfelt = 0, felt = 0] = counts.get(kind) ?? [];
        expect(unfelt, kind).toBeGreaterThan(2);
        expect(felt, kind).toBeGreaterThan(2);
      }
    },
    SLOW,
  );
});
