import type { Model } from '../../flow/model/model.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { DEEPEST_FEEDERS, tooDeepIn } from '../lookup/joins.js';
import { routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Feeder } from '../types/steps.js';
import { keys, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { mark, whole } from '../values/scalars.js';
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
