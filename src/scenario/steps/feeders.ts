import type { Model } from '../../flow/model/model.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { DEEPEST_FEEDERS, tooDeepIn } from '../lookup/joins.js';
import { type PlacedRoute, type PlacedStep, routesOf, stationsOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Feeder } from '../types/steps.js';
import { keys, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { flag, mark, whole } from '../values/scalars.js';
import { meets, varietiesOf } from './conditions.js';
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
      'full kit': flag
        .optional()
        .describe(
          'True: a sub-assembly begins only when the parts that all its steps take are there together; ' +
            'they are set aside for it, and no place is taken before. False: each step waits for its own ' +
            'parts, in a place of its station. Default: true. Example: false',
        ),
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
      ({ stock: target = 0, atStart = 0, own, fullKit, route }): Feeder => ({
        kind: own === true ? 'own' : 'stock',
        target,
        atStart,
        fullKit: fullKit === false ? fullKit : undefined,
        route,
      }),
    );
}

/**
 * Feeders that need each other in a ring: none of their sub-assemblies could ever be finished. Each ring is
 * told once. And feeders that need each other in too long a row.
 */
export function* feederFindings(scenario: Scenario): Iterable<Finding> {
  const tooDeep = tooDeepIn(scenario);
  if (tooDeep !== undefined)
    yield {
      path: tooDeep,
      wanted: `at most ${DEEPEST_FEEDERS} feeders of which each needs the next`,
      seen: 'more',
      atKey: true,
    };
  const routes = new Map(routesOf(scenario).map((route) => [route.feeder, route])),
    done = new Set<string>(),
    way: string[] = [];
  function* walk(feeder: string): Iterable<Finding> {
    const route = routes.get(feeder);
    if (route === undefined || way.length > DEEPEST_FEEDERS) return;
    way.push(feeder);
    for (const { path, step } of stepsOf(route)) {
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

/** Kits that could never be there at once. Of a single step that is told with the amounts. */
export function* kitFindings(scenario: Scenario): Iterable<Finding> {
  for (const route of routesOf(scenario)) {
    const feeder = own(scenario.feeders, route.feeder ?? '');
    if (feeder === undefined || feeder.fullKit === false) continue;
    const takers = kitSteps(scenario, route);
    if (takers.length === 0) continue;
    for (const variety of varietiesOf(scenario, route.entries)) {
      const sums = new Map<string, number>();
      for (const { path, step } of takers) {
        if (!meets(step.when, variety)) continue;
        for (const [name, count] of Object.entries(step.parts)) {
          if (count === 'own') continue;
          const before = sums.get(name) ?? 0,
            most = mostAtOnce(scenario, name);
          sums.set(name, before + count);
          if (before > most.amount || before + count <= most.amount) continue;
          if (before === 0 && most.isTarget) continue;
          yield {
            path: [...path, 'parts', name],
            wanted:
              `at most ${most.amount} in the full kit of a sub-assembly, ${most.why}; or full kit: false ` +
              `at feeder ${route.feeder}`,
            seen: String(before + count),
            atKey: true,
          };
          return;
        }
      }
    }
  }
}

/** Of what a step takes: the most that can be in stock at one time. */
function mostAtOnce(scenario: Scenario, name: string) {
  const target = own(scenario.feeders, name)?.target,
    supply = own(scenario.supplies, name);
  if (target !== undefined) return { amount: target, isTarget: true, why: `the target stock of ${name}` };
  if (supply?.order.kind !== 'dates') return { amount: Infinity, isTarget: false, why: '' };
  return {
    amount: supply.atStart + supply.order.dates.reduce((sum, { lot }) => sum + lot, 0),
    isTarget: false,
    why: `all ${name} that ever come in`,
  };
}

/** Steps of a feeder whose parts are in its kit, as `isInKit` of a model: surely done, one by one. */
const kitSteps = (scenario: Scenario, route: PlacedRoute): readonly PlacedStep[] =>
  stepsOf(route).filter(
    ({ step: { parts, sample, rework, at } }) =>
      Object.keys(parts).length > 0 &&
      (sample?.oneIn ?? 1) === 1 &&
      rework !== 'only' &&
      stationsOf(scenario).get(at)?.station.lot === undefined,
  );

/** The unit's route, then those of the feeders. */
export function compileRoutes({ scenario, ids, laid }: Compilation): Model['routes'] {
  const unit = { name: 'unit', own: false, stock: -1, target: 0, fullKit: false };
  const feeders = Object.entries(scenario.feeders).map(([name, { kind, target, fullKit }]) => ({
    name,
    own: kind === 'own',
    stock: kind === 'stock' ? ids.stock(name) : -1,
    target: kind === 'stock' ? target : 0,
    fullKit: fullKit !== false,
  }));
  const rows = [unit, ...feeders];
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    firstStep: Int32Array.from(laid.firstStep),
    ...uint8(rows, 'own', 'fullKit'),
    ...int32(rows, 'stock', 'target'),
  };
}
