import { allSteps, type PlacedStep } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { own, remembered } from '../values/raw.js';
import { covers } from './conditions.js';

/** Own parts come off at one step of the main route and rejoin at one later step of it. */
export function* ownPartFindings(scenario: Scenario): Iterable<Finding> {
  const steps = allSteps(scenario),
    main = steps.filter(({ route }) => route.kind === 'unit'),
    kindOf = (name: string): string | undefined => own(scenario.feeders, name)?.kind;
  for (const { path, step, route } of steps) {
    const { takesOff, parts } = step;
    for (const name of takesOff)
      if (kindOf(name) === 'stock')
        yield {
          path: [...path, 'takes off'],
          wanted: 'a feeder of own parts (own: true)',
          seen: `"${name}", a feeder of stock`,
        };
    for (const [name, count] of Object.entries(parts)) {
      const kind = kindOf(name);
      if (kind !== undefined && (kind === 'own') !== (count === 'own'))
        yield {
          path: [...path, 'parts', name],
          wanted:
            kind === 'own'
              ? 'the word own, since these parts come off the unit itself'
              : 'a number, since these parts come from a stock',
          seen: count === 'own' ? '"own"' : String(count),
        };
    }
    if (route.kind === 'unit') continue;
    for (const name of [...takesOff, ...Object.keys(parts)])
      if (kindOf(name) === 'own')
        yield {
          path: [...path, takesOff.includes(name) ? 'takes off' : 'parts'],
          wanted: 'own parts only on the route of the unit',
          seen: `"${name}"`,
        };
  }
  const takers = byName(main, (step) => step.takesOff),
    joiners = byName(main, (step) => Object.keys(step.parts));
  for (const name of Object.keys(scenario.feeders))
    if (kindOf(name) === 'own')
      yield* pairing(scenario, name, takers.get(name) ?? [], joiners.get(name) ?? []);
}

/** Steps by each name that they give. */
function byName(
  steps: readonly PlacedStep[],
  namesOf: (step: PlacedStep['step']) => readonly string[],
): ReadonlyMap<string, readonly PlacedStep[]> {
  const found = new Map<string, PlacedStep[]>();
  for (const placed of steps)
    for (const name of new Set(namesOf(placed.step))) remembered(found, name, () => []).push(placed);
  return found;
}

function* pairing(
  scenario: Scenario,
  name: string,
  [taker, ...takers]: readonly PlacedStep[],
  [joiner, ...joiners]: readonly PlacedStep[],
): Iterable<Finding> {
  for (const { path } of takers)
    yield { path: [...path, 'takes off'], wanted: `one step that takes off ${name}`, seen: 'a second one' };
  for (const { path } of joiners)
    yield {
      path: [...path, 'parts', name],
      wanted: `one step at which ${name} rejoin`,
      seen: 'a second one',
      atKey: true,
    };
  if (joiner === undefined) {
    if (taker !== undefined)
      yield {
        path: [...taker.path, 'takes off'],
        wanted: `a later step with parts { ${name}: own }; no step has it`,
        seen: `"${name}"`,
      };
    return;
  }
  const path = [...joiner.path, 'parts', name],
    { step } = joiner;
  if (taker === undefined) {
    yield { path, wanted: `an earlier step that takes off ${name}; no step does`, atKey: true };
    return;
  }
  if (joiner.index <= taker.index)
    yield {
      path,
      wanted: `a step after "${taker.step.name}", where they come off`,
      seen: `"${step.name}"`,
      atKey: true,
    };
  if (step.sample !== undefined || step.rework === 'only')
    yield {
      path,
      wanted: 'a step that every unit visits',
      seen: `"${step.name}", with ${step.sample === undefined ? 'rework: only' : 'a sample'}`,
      atKey: true,
    };
  if (!covers(step.when, taker.step.when, scenario.programme.options))
    yield {
      path,
      wanted: `a step that every unit visits whose ${name} come off at "${taker.step.name}"`,
      seen: `"${step.name}", with a narrower condition`,
      atKey: true,
    };
}
