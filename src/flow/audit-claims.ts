import type { Resource } from './resource.js';
import type { Run } from './run.js';

/** People of a crew that places and, as teams, units hold. */
export function heldBy({ places, shop }: Run, crew: Resource): number {
  let held = 0;
  for (const { holdsCrew, unit } of places)
    if (holdsCrew) for (const { resource, amount } of unit!.step.needs) if (resource === crew) held += amount;
  for (const { resource, amount, held: teams } of shop.stays) if (resource === crew) held += amount * teams;
  return held;
}

/**
 * Carriers and teams are counted as the units have them; carriers free, with units and on the way back are all there are.
 * @throws Error naming the carriers or the crew, and both sums
 */
export function auditStays({ shop, units }: Run): void {
  for (const {
    bit,
    resource: { name, isCrew, amount, free },
    held,
    coming,
  } of shop.stays) {
    const kept = units.all.filter(({ alive, stays }) => alive && (stays & bit) !== 0).length;
    if (kept !== held) throw new Error(`audit: units that keep ${name} must be ${held}; got ${kept}`);
    if (!isCrew && free + kept + coming !== amount)
      throw new Error(
        `audit: ${name} free, kept and on the way back must be ${amount}; got ${free}, ${kept} and ${coming}`,
      );
  }
}
