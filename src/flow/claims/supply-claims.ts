import type { Place } from '../floor/place.js';
import { WAIT_NEEDS } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Run } from '../run.js';
import { replenish } from './supply-orders.js';

/**
 * What a claim does to the supplies it wants: it is demand for which lots are ordered, and it may have to
 * wait for them.
 */

/** A request for the supplies of a step: they are wanted from now on. What has begun takes none. */
export function askSupplies(run: Run, place: Place, { supplyNeeds }: Step): void {
  if (place.phase !== WAIT_NEEDS) return;
  for (const { resource, amount } of supplyNeeds) {
    resource.supply!.position -= amount;
    replenish(run, resource.supply!);
  }
}

/** In a scan: books which supplies the request of a place lacks, by the rule of `lacking`. */
export function noteLack(run: Run, place: Place): void {
  if (place.phase !== WAIT_NEEDS) return;
  place.unit!.step.supplyNeeds.forEach(({ resource, amount }, i) => {
    const isLacking = resource.free < amount || resource.scarceAt === run.scan;
    if (isLacking !== ((place.lackedSupplies & (1 << i)) !== 0)) change(run, place, i, isLacking);
  });
}

/** The request is met. */
export function endLack(run: Run, place: Place): void {
  for (let i = 0; place.lackedSupplies >> i !== 0; i++)
    if ((place.lackedSupplies & (1 << i)) !== 0) change(run, place, i, false);
}

function change(run: Run, place: Place, i: number, isLacking: boolean): void {
  const supply = place.unit!.step.supplyNeeds[i].resource.supply!;
  place.lackedSupplies ^= 1 << i;
  supply.changeLacking(isLacking ? 1 : -1, run.now);
  // The part came at the instant at which it was asked for.
  if (!isLacking && place.askedAt === run.now) supply.waits--;
}
