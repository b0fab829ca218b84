import type { Run } from '../run.js';
import { give } from './resource.js';
import type { Supply } from './supply.js';
import { lateness, replenish, scheduleDelivery, scheduleNextLot, setOut } from './supply-orders.js';

/** Rule 12: bought-in parts come in lots, ordered by a reorder level or by a plan of deliveries. */

/** Orders that are due when the run starts, and the first date of each plan. */
export function beginSupplies(run: Run): void {
  for (const supply of run.shop.supplies)
    if (supply.isPlanned) scheduleDelivery(run, supply);
    else replenish(run, supply);
}

/** The event of a source: first those of lots on their way, by supply, then those of plans. */
export function supplyEvent(run: Run, source: number): void {
  const { supplies } = run.shop,
    supply = supplies[source % supplies.length];
  run.supplyEvents--;
  if (source >= supplies.length) {
    deliver(run, supply);
    return;
  }
  supply.settle(run.now);
  const { units, isLate } = supply.coming.pop()!;
  supply.onOrder -= units;
  arrive(run, supply, units, isLate);
  scheduleNextLot(run, supply);
}

/** Whether somebody waits for a lot that is ahead. */
export function mayArrive(run: Run): boolean {
  return run.shop.supplies.some((supply) => supply.short > 0 && supply.hasMore);
}

/** A date of the plan: the lot is there, or it is late. */
function deliver(run: Run, supply: Supply): void {
  const units = supply.columns.planLots[supply.id][supply.planned++],
    late = lateness(run, supply);
  if (late > 0) setOut(run, supply, { at: run.now + late, units, isLate: true });
  else arrive(run, supply, units, false);
  scheduleDelivery(run, supply);
}

function arrive(run: Run, supply: Supply, units: number, isLate: boolean): void {
  supply.receive(units, isLate);
  give(run, supply.stock, units);
}
