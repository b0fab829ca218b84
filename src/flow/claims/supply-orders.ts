import { SUPPLY_LOT } from '../floor/states.js';
import type { Run } from '../run.js';
import type { Supply, SupplyLot } from './supply.js';

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
    const lead = leadDraw[id] < 0 ? 0 : run.sampler.next(leadDraw[id]),
      late = lateness(run, supply);
    setOut(run, supply, { at: run.now + lead + late, units: supply.lot, isLate: late > 0 });
  }
}

/** By how many minutes a lot is late; 0: it is not. */
export function lateness(run: Run, { id, columns: { lateDraw, lateChance, lateByDraw } }: Supply): number {
  return lateDraw[id] < 0 || run.sampler.next(lateDraw[id]) >= lateChance[id]
    ? 0
    : run.sampler.next(lateByDraw[id]);
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
