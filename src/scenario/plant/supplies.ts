import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { float64, int32 } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import { allSteps } from '../lookup/placed.js';
import type { Reorder, Supply } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { chance, whole } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { deliveriesSchema, plannedDeliveries } from './deliveries.js';

/** A bought-in part: a stock that is filled up in lots from outside. */
export function supplySchema(time: TimeSchema) {
  const reorder = keys(
    {
      level: whole(0).describe(
        'A lot is ordered when stock and lots on order, less the parts that units wait for, are at ' +
          'this level (plus the safety stock) or below. Example: 4',
      ),
      lot: whole(1).describe('Parts in a lot. Example: 8'),
      'lead time': time.describe(
        'From the order to the arrival of the lot, by the clock, drawn for each lot; a lot may ' +
          'overtake another. Example: { low: 10 days, high: 20 days }',
      ),
    },
    'reorder: a map with the keys level, lot and lead time',
  ).transform((rule): Omit<Reorder, 'safetyStock'> => ({ kind: 'reorder', ...rule }));
  const late = keys(
    {
      chance: chance.describe('The chance that a lot is late, drawn for each lot. Example: 10 %'),
      by: time.describe('How late such a lot is. Example: { low: 2 days, high: 10 days }'),
    },
    'late: a map with the keys chance and by',
  );
  return keys(
    {
      site: name('the name of a site').describe(
        'The site where the parts come in; steps of this site take them. Example: final plant',
      ),
      'at start': whole(0).default(0).describe('Parts in stock when the run starts. Default: 0. Example: 6'),
      reorder: reorder
        .optional()
        .describe('Lots are ordered by a reorder level. Example: { level: 4, lot: 8, lead time: 15 days }'),
      deliveries: deliveriesSchema
        .optional()
        .describe(
          'Instead of `reorder`: lots by a delivery plan, on given dates or at a fixed interval, ' +
            'regardless of stock. Example: { lot: 10, every: 7 days, from: 2027-03-08 }',
        ),
      'safety stock': whole(0)
        .optional()
        .describe('Spare stock, added to the reorder level. Default: 0. Example: 3'),
      late: late
        .optional()
        .describe(
          'Lots that come later than planned. Default: none. Example: { chance: 10 %, by: { low: 2 ' +
            'days, high: 10 days } }',
        ),
    },
    'a supply: a map with site, and reorder or deliveries',
  )
    .superRefine(
      together(({ reorder, deliveries, safetyStock }, wrong) => {
        if ((reorder === undefined) === (deliveries === undefined))
          wrong([], 'exactly one of reorder and deliveries', reorder === undefined ? 'neither' : 'both');
        else if (safetyStock !== undefined && reorder === undefined)
          wrong(
            ['safety stock'],
            'a safety stock only together with reorder; with deliveries raise at start, or the first lot',
          );
      }),
    )
    .transform(({ site, atStart, late, reorder, deliveries, safetyStock = 0 }): Supply => {
      const order = reorder === undefined ? deliveries : { ...reorder, safetyStock };
      // Without an order there is a problem, see above.
      return order === undefined ? z.NEVER : { site, atStart, late, order };
    });
}

/** Supplies that nothing takes, or that are taken in another site. */
export function* supplyFindings(scenario: Scenario): Iterable<Finding> {
  const used = new Set<string>();
  for (const { path, step, where } of allSteps(scenario)) {
    for (const [name, count] of Object.entries(step.parts)) {
      const supply = own(scenario.supplies, name);
      if (supply === undefined) continue;
      used.add(name);
      if (count === 'own')
        yield {
          path: [...path, 'parts', name],
          wanted: 'a number, since these parts come from a supply',
          seen: '"own"',
        };
      if (where?.siteName !== supply.site)
        yield {
          path: [...path, 'parts', name],
          wanted: `a step in site ${supply.site}, where this supply comes in`,
          seen: `"${step.name}", in site ${where?.siteName}`,
          atKey: true,
        };
    }
  }
  for (const name of Object.keys(scenario.supplies))
    if (!used.has(name))
      yield {
        path: ['supplies', name],
        wanted: 'a step with this supply in its parts; no step has it',
        atKey: true,
      };
}

/**
 * Supplies, called last so that their draws leave those of all else alone: `name/lead time`, `name/late`,
 * `name/late by`.
 */
export function compileSupplies(all: Compilation): Model['supplies'] {
  const { scenario, ids, draws } = all;
  const rows = Object.entries(scenario.supplies).map(([name, supply]) => {
    const { order, late } = supply,
      lateByDraw = late !== undefined && late.chance > 0 ? draws.add(`${name}/late by`, late.by) : NO_DRAW;
    return {
      resource: ids.part(name),
      level: order.kind === 'reorder' ? order.level + order.safetyStock : -1,
      lot: order.kind === 'dates' ? 0 : order.lot,
      leadDraw: order.kind === 'reorder' ? draws.add(`${name}/lead time`, order.leadTime) : NO_DRAW,
      lateChance: late?.chance ?? 0,
      lateDraw: lateByDraw === NO_DRAW ? NO_DRAW : draws.chance(`${name}/late`),
      lateByDraw,
      plan: plannedDeliveries(supply, all),
    };
  });
  return {
    count: rows.length,
    ...int32(rows, 'resource', 'level', 'lot', 'leadDraw', 'lateDraw', 'lateByDraw'),
    ...float64(rows, 'lateChance'),
    planTimes: rows.map(({ plan }) => float64(plan, 'at').at),
    planLots: rows.map(({ plan }) => int32(plan, 'lot').lot),
  };
}
