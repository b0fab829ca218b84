import type { Model } from '../../flow/model/model.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { allSteps, type PlacedStep, routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Feeder } from '../types/steps.js';
import { keys, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { mark, whole } from '../values/scalars.js';
import { covers } from './conditions.js';
import type { RouteSchema } from './route.js';

export function feederSchema(route: RouteSchema) {
  return keys(
    {
      stock: whole(1)
        .optional()
        .describe(
          'For interchangeable sub-assemblies: the target of a pull loop, counting those in stock ' +
            'and in progress. Example: 3',
        ),
      'at start': whole(0)
        .optional()
        .describe('Sub-assemblies in stock when the run starts. Default: 0. Example: 3'),
      own: mark
        .optional()
        .describe('True for parts that are taken off a unit and rejoin the same unit. Instead of `stock`.'),
      route: route.describe(
        'The steps of the sub-assembly. Example: [{ step: build axle, at: axle bench, work: 2 h }]',
      ),
    },
    'a feeder: a map with stock or own, and route',
  )
    .superRefine(
      together(({ stock, own, atStart }, wrong) => {
        if ((stock === undefined) === (own === undefined))
          wrong([], 'exactly one of stock and own: true', stock === undefined ? 'neither' : 'both');
        if (atStart !== undefined && own === true) wrong(['at start'], 'no stock at start for own parts');
        if (stock !== undefined && (atStart ?? 0) > stock)
          wrong(['at start'], `at most the target stock, ${stock}`);
      }),
    )
    .transform(
      ({ stock: target = 0, atStart = 0, own, route }): Feeder => ({
        kind: own === true ? 'own' : 'stock',
        target,
        atStart,
        route,
      }),
    );
}

/**
 * Feeders that need each other in a ring: none of their sub-assemblies could ever be finished. Each ring is
 * told once.
 */
export function* feederFindings(scenario: Scenario): Iterable<Finding> {
  const steps = routesOf(scenario).flatMap(stepsOf),
    done = new Set<string>(),
    way: string[] = [];
  function* walk(feeder: string): Iterable<Finding> {
    way.push(feeder);
    for (const { path, step } of steps.filter(({ route }) => route.feeder === feeder)) {
      for (const part of Object.keys(step.parts)) {
        // A feeder that takes its own parts is told with the amounts.
        if (own(scenario.feeders, part)?.kind !== 'stock' || part === feeder || done.has(part)) continue;
        const seen = way.indexOf(part);
        if (seen < 0) yield* walk(part);
        else
          yield {
            path: [...path, 'parts', part],
            wanted: 'parts that are built without this feeder',
            seen: `a ring: ${[...way.slice(seen), part].join(' needs ')}`,
            atKey: true,
          };
      }
    }
    way.pop();
    done.add(feeder);
  }
  for (const feeder of Object.keys(scenario.feeders)) if (!done.has(feeder)) yield* walk(feeder);
}

/** The unit's route, then those of the feeders. */
export function compileRoutes({ scenario, ids, laid }: Compilation): Model['routes'] {
  const unit = { name: 'unit', own: false, stock: -1, target: 0 };
  const feeders = Object.entries(scenario.feeders).map(([name, { kind, target }]) => ({
    name,
    own: kind === 'own',
    stock: kind === 'stock' ? ids.stock(name) : -1,
    target: kind === 'stock' ? target : 0,
  }));
  const rows = [unit, ...feeders];
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    firstStep: Int32Array.from(laid.firstStep),
    ...uint8(rows, 'own'),
    ...int32(rows, 'stock', 'target'),
  };
}

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
  for (const name of Object.keys(scenario.feeders))
    if (kindOf(name) === 'own') yield* pairing(scenario, name, main);
}

function* pairing(scenario: Scenario, name: string, steps: readonly PlacedStep[]): Iterable<Finding> {
  const [taker, ...takers] = steps.filter(({ step }) => step.takesOff.includes(name)),
    [joiner, ...joiners] = steps.filter(({ step }) => own(step.parts, name) !== undefined);
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
