import { SUPPLY_LOT, WAIT_NEEDS } from '../floor/states.js';
import type { Run } from '../run.js';
import type { Claimant } from './outside.js';
import { give } from './resource.js';
import type { Supply, SupplyLot } from './supply.js';

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

/**
 * What a claim does to the supplies it wants: it is demand for which lots are ordered, and it may have to
 * wait for them.
 */

/** A request for the supplies of a step: they are wanted from now on. What has begun takes none. */
export function askSupplies(run: Run, place: Claimant): void {
  if (place.phase !== WAIT_NEEDS) return;
  for (const { resource, amount } of place.asked.supplyNeeds) {
    resource.supply!.position -= amount;
    replenish(run, resource.supply!);
  }
}

/** In a scan: books which supplies the request of a place lacks, by the rule of `lacking`. */
export function noteLack(run: Run, place: Claimant): void {
  if (place.phase !== WAIT_NEEDS) return;
  place.asked.supplyNeeds.forEach(({ resource, amount }, i) => {
    const isLacking = resource.free < amount || resource.scarceAt === run.scan;
    if (isLacking !== ((place.lackedSupplies & (1 << i)) !== 0)) change(run, place, i, isLacking);
  });
}

/** The request is met. */
export function endLack(run: Run, place: Claimant): void {
  for (let i = 0; place.lackedSupplies >> i !== 0; i++)
    if ((place.lackedSupplies & (1 << i)) !== 0) change(run, place, i, false);
}

function change(run: Run, place: Claimant, i: number, isLacking: boolean): void {
  const supply = place.asked.supplyNeeds[i].resource.supply!;
  place.lackedSupplies ^= 1 << i;
  supply.changeLacking(isLacking ? 1 : -1, run.now);
  // The part came at the instant at which it was asked for.
  if (!isLacking && place.askedAt === run.now) supply.waits--;
}

/**
 * Lots on their way, rule 12. Each supply has two sources of events: the next lot to come, and the next date
 * of its plan.
 */

/** As many lots are ordered as bring stock and orders, less the demand that waits, above the level. */
export function replenish(run: Run, supply: Supply): void {
  if (supply.isPlanned) return;
  const {
    id,
    columns: { leadDraw },
  } = supply;
  while (supply.position <= supply.level) {
    supply.position += supply.lot;
    const lead = run.sampler.time(leadDraw[id]),
      late = lateness(run, supply);
    setOut(run, supply, { at: run.now + lead + late, units: supply.lot, isLate: late > 0 });
  }
}

/** By how many minutes a lot is late; 0: it is not. */
export function lateness(run: Run, { id, columns: { lateDraw, lateChance, lateByDraw } }: Supply): number {
  return lateDraw[id] < 0 || run.sampler.next(lateDraw[id]) >= lateChance[id]
    ? 0
    : run.sampler.time(lateByDraw[id]);
}

export function setOut(run: Run, supply: Supply, lot: SupplyLot): void {
  const { coming, id } = supply,
    next = coming.length > 0 ? coming[coming.length - 1].at : Infinity;
  supply.setOut(lot, run.now);
  if (lot.at >= next) return;
  if (next < Infinity) {
    run.queue.remove(SUPPLY_LOT, id);
    run.supplyEvents--;
  }
  schedule(run, lot.at, id);
}

export function scheduleNextLot(run: Run, { coming, id }: Supply): void {
  if (coming.length > 0) schedule(run, coming[coming.length - 1].at, id);
}

export function scheduleDelivery(run: Run, { planned, id, columns: { planTimes } }: Supply): void {
  if (planned < planTimes[id].length) schedule(run, planTimes[id][planned], run.shop.supplies.length + id);
}

function schedule(run: Run, time: number, source: number): void {
  run.queue.push(time, SUPPLY_LOT, source);
  run.supplyEvents++;
}
