import { type PlacedStep, routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { own } from '../values/raw.js';
import { covers } from './conditions.js';

/** Own parts come off at one step of the main route and rejoin at one later step of it. */
export function ownPartFindings(scenario: Scenario): Finding[] {
  const [main, ...feeders] = routesOf(scenario);
  const steps = stepsOf(main);
  return [
    ...routesOf(scenario).flatMap((route) => stepsOf(route).flatMap((placed) => wrongKind(scenario, placed))),
    ...feeders.flatMap((route) => stepsOf(route).flatMap((placed) => offMain(scenario, placed))),
    ...Object.entries(scenario.feeders).flatMap(([name, feeder]) =>
      feeder.kind === 'own' ? pairing(scenario, name, steps) : [],
    ),
  ];
}

function wrongKind(scenario: Scenario, { path, step }: PlacedStep): Finding[] {
  const off = step.takesOff.flatMap((name): Finding[] =>
    own(scenario.feeders, name)?.kind === 'stock'
      ? [
          {
            path: [...path, 'takes off'],
            wanted: 'a feeder of own parts (own: true)',
            seen: `"${name}", a feeder of stock`,
          },
        ]
      : [],
  );
  const joined = Object.entries(step.parts).flatMap(([name, count]): Finding[] => {
    const kind = own(scenario.feeders, name)?.kind;
    if (kind === 'own' && count !== 'own')
      return [
        {
          path: [...path, 'parts', name],
          wanted: 'the word own, since these parts come off the unit itself',
          seen: String(count),
        },
      ];
    if (kind === 'stock' && count === 'own')
      return [
        {
          path: [...path, 'parts', name],
          wanted: 'a number, since these parts come from a stock',
          seen: '"own"',
        },
      ];
    return [];
  });
  return [...off, ...joined];
}

function offMain(scenario: Scenario, { path, step }: PlacedStep): Finding[] {
  const names = [...step.takesOff, ...Object.keys(step.parts)].filter(
    (name) => own(scenario.feeders, name)?.kind === 'own',
  );
  return names.map((name) => ({
    path: [...path, step.takesOff.includes(name) ? 'takes off' : 'parts'],
    wanted: 'own parts only on the route of the unit',
    seen: `"${name}"`,
  }));
}

function pairing(scenario: Scenario, name: string, steps: readonly PlacedStep[]): Finding[] {
  const takers = steps.filter(({ step }) => step.takesOff.includes(name));
  const joiners = steps.filter(({ step }) => own(step.parts, name) !== undefined);
  const found: Finding[] = [
    ...takers.slice(1).map(({ path }) => ({
      path: [...path, 'takes off'],
      wanted: `one step that takes off ${name}`,
      seen: 'a second one',
    })),
    ...joiners.slice(1).map(({ path }) => ({
      path: [...path, 'parts', name],
      wanted: `one step at which ${name} rejoin`,
      seen: 'a second one',
      atKey: true,
    })),
  ];
  const [taker] = takers;
  const [joiner] = joiners;
  if (taker === undefined && joiner !== undefined)
    found.push({
      path: [...joiner.path, 'parts', name],
      wanted: `an earlier step that takes off ${name}; no step does`,
      atKey: true,
    });
  if (taker !== undefined && joiner === undefined)
    found.push({
      path: [...taker.path, 'takes off'],
      wanted: `a later step with parts { ${name}: own }; no step has it`,
      seen: `"${name}"`,
    });
  if (taker === undefined || joiner === undefined) return found;

  const rejoin = [...joiner.path, 'parts', name];
  if (joiner.index <= taker.index)
    found.push({
      path: rejoin,
      wanted: `a step after "${taker.step.name}", where they come off`,
      seen: `"${joiner.step.name}"`,
      atKey: true,
    });
  if (joiner.step.sample !== undefined || joiner.step.rework === 'only')
    found.push({
      path: rejoin,
      wanted: 'a step that every unit visits',
      seen: `"${joiner.step.name}", with ${joiner.step.sample === undefined ? 'rework: only' : 'a sample'}`,
      atKey: true,
    });
  if (!covers(joiner.step.when, taker.step.when, scenario.programme.options))
    found.push({
      path: rejoin,
      wanted: `a step that every unit visits whose ${name} come off at "${taker.step.name}"`,
      seen: `"${joiner.step.name}", with a narrower condition`,
      atKey: true,
    });
  return found;
}
