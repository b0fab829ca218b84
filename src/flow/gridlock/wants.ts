import { isToClaim } from '../claims/carriers.js';
import { isWanted } from '../claims/equipment.js';
import type { Resource } from '../claims/resource.js';
import type { Place } from '../floor/place.js';
import { WAIT_NEEDS } from '../floor/states.js';

/** One thing that a claim wants, and how much of it. */
export interface Want {
  readonly resource: Resource;
  readonly amount: number;
}

/**
 * All that the claim at a place asks for, own parts left out; once its step has begun, people and equipment
 * alone.
 */
export function wantsOf(place: Place): Want[] {
  const { unit, phase } = place,
    { step } = unit!,
    wants = new Map<Resource, number>();
  const add = ({ resource, amount }: Want): void => {
    wants.set(resource, (wants.get(resource) ?? 0) + amount);
  };
  for (const need of step.needs)
    if ((phase === WAIT_NEEDS || need.resource.isHeld) && isWanted(place, need)) add(need);
  if (phase === WAIT_NEEDS)
    for (const companion of step.companions) if (isToClaim(unit!, step, companion)) add(companion);
  return Array.from(wants, ([resource, amount]) => ({ resource, amount }));
}
