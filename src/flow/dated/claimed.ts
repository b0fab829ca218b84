import { give, type Resource } from '../claims/resource.js';
import { replenish } from '../claims/supplies.js';
import { staff } from '../interruptions/crews.js';
import { awaitFailure } from '../interruptions/failures.js';
import type { Model } from '../model/model.js';
import { CARRIER } from '../model/resources.js';
import type { Run } from '../run.js';

/** What is claimed, on its date: people, carriers, equipment, how supplies are ordered. */

/** Only the people, the carriers and the equipment of a stage are there. */
export function withholdClaimed(run: Run, before: Model, next: Model): void {
  for (const { resource, amount, isByShift } of changed(run, before, next)) {
    resource.amount = amount;
    if (resource.isHeld) {
      if (!isByShift) resource.staff(amount, run.now);
      continue;
    }
    resource.free = amount;
    for (const companion of run.shop.companions)
      if (companion.resource === resource) companion.comingSources = companion.sources.splice(amount);
  }
}

/** People come, or leave with their work broken off; carriers and equipment come, free. */
export function bringClaimed(run: Run, before: Model, next: Model): void {
  for (const { resource, amount, isByShift } of changed(run, before, next)) {
    const more = amount - resource.amount;
    resource.amount = amount;
    if (resource.isCrew) {
      if (!isByShift) staff(run, resource, amount);
      continue;
    }
    if (resource.shared !== null) {
      resource.staff(resource.onHand + more, run.now);
      run.listMatch(resource.pool);
      for (const { modes, index } of resource.shared.pieces)
        if (index >= amount - more && index < amount) for (const mode of modes) awaitFailure(run, mode);
      continue;
    }
    for (const companion of run.shop.companions)
      if (companion.resource === resource) companion.sources.push(...companion.comingSources.splice(0, more));
    give(run, resource, more);
  }
}

interface Claimed {
  readonly resource: Resource;
  readonly amount: number;
  /** Whether each shift has its own number of people. */
  readonly isByShift: boolean;
}

/** Crews, carriers and equipment of which there is another number. */
function changed({ shop }: Run, before: Model, { resources }: Model): Claimed[] {
  return shop.resources.flatMap((resource, r) => {
    const amount = resources.amount[r];
    return (resource.isHeld || resource.kind === CARRIER) && before.resources.amount[r] !== amount
      ? [{ resource, amount, isByShift: resource.isCrew && resources.shifts[r] !== null }]
      : [];
  });
}

/** Lots that come are as they were ordered. */
export function goBySupplies(run: Run, before: Model, next: Model): void {
  if (next.supplies === before.supplies) return;
  for (const supply of run.shop.supplies) {
    supply.goBy(next.supplies);
    // At the start they are ordered with all that begins.
    if (run.stage > 0) replenish(run, supply);
  }
}
