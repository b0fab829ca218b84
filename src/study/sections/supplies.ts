import { named } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

/** One bought-in part over the time observed. */
export interface SupplyResult {
  readonly name: string;
  readonly site: string;
  readonly by: 'reorder' | 'deliveries';
  readonly stock: Estimate;
  /** Share of time without stock. */
  readonly out: Estimate;
  /** Least stock. */
  readonly least: Estimate;
  readonly lots: Estimate;
  readonly lateLots: Estimate;
  /** Mean units on order; of a plan of deliveries, overdue. */
  readonly onOrder: Estimate;
  /**
   * Times that a unit or sub-assembly had to wait for it, and the mean length of these waits by the clock.
   */
  readonly waits: Estimate;
  readonly waitHours: Estimate;
}

/** A feeder that builds to a stock. */
export interface FeederResult {
  readonly name: string;
  readonly target: number;
  readonly stock: Estimate;
  /** Share of time without stock. */
  readonly out: Estimate;
}

export function supplies(sample: Sample): Pending<SupplyResult[]> {
  const { supplies } = sample.model;
  return Array.from(supplies.resource, (resource, id) => ({
    ...named(sample.model, 'resources', resource),
    by: supplies.level[id] < 0 ? 'deliveries' : 'reorder',
    stock: sample.amount(({ stockMean }) => stockMean[resource]),
    out: sample.share(({ stockOut }) => stockOut[resource]),
    least: sample.amount((each) => each.supplies.least[id]),
    lots: sample.events((each) => each.supplies.lots[id]),
    lateLots: sample.events((each) => each.supplies.lateLots[id]),
    onOrder: sample.amount((each) => each.supplies.onOrder[id]),
    waits: sample.events((each) => each.supplies.waits[id]),
    waitHours: sample.amount((each) => ratio(each.supplies.waitMinutes[id] / 60, each.supplies.waits[id])),
  }));
}

/** Feeders that build to a stock. */
export function feeders(sample: Sample): Pending<FeederResult[]> {
  const { routes } = sample.model;
  return routes.names.flatMap((name, route) => {
    const stock = routes.stock[route];
    return stock < 0
      ? []
      : [
          {
            name,
            target: routes.target[route],
            stock: sample.amount(({ stockMean }) => stockMean[stock]),
            out: sample.share(({ stockOut }) => stockOut[stock]),
          },
        ];
  });
}
