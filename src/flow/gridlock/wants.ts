import { isToClaim } from '../claims/carriers.js';
import { isToBegin } from '../claims/claims.js';
import { isWanted } from '../claims/equipment.js';
import { type Claimant, OutsideClaim } from '../claims/outside.js';
import type { Resource } from '../claims/resource.js';
import type { Team } from '../claims/teams.js';
import { SidePlace } from '../floor/side-place.js';
import type { Run } from '../run.js';

/** One thing that a claim wants, and how much of it. */
export interface Want {
  readonly resource: Resource;
  readonly amount: number;
  /** People besides those of this team, which is with the unit. */
  readonly own?: Team | undefined;
}

/** Teams that are with the unit, do its work, and may be without people. */
export function ownTeams({ unit, asked }: Claimant): Team[] {
  const { real } = unit!;
  return asked.teams
    .filter(({ bit }) => (real.companionBits & bit) !== 0)
    .map((companion) => ({ unit: real, companion }));
}

/**
 * All that the claim at a place asks for, own parts left out; once its step has begun, people and equipment
 * alone.
 */
export function wantsOf(place: Claimant): Want[] {
  const { unit, phase, asked } = place,
    isNew = isToBegin(phase),
    wants = new Map<Resource, number>();
  const add = ({ resource, amount }: Want): void => {
    wants.set(resource, (wants.get(resource) ?? 0) + amount);
  };
  for (const need of asked.needs) if ((isNew || need.resource.isHeld) && isWanted(place, need)) add(need);
  if (isNew) for (const companion of asked.companions) if (isToClaim(unit!, asked, companion)) add(companion);
  const teams = ownTeams(place);
  return Array.from(wants, ([resource, amount]) => ({
    resource,
    amount,
    own: teams.find(({ companion }) => companion.resource === resource),
  }));
}

/**
 * Claims at a place that is down are passed over; so are those ahead of a station while no place is free, and
 * those for more people than a shift has, or for equipment that may be down.
 */
export function mayStepAside({ crewShifts }: Run, place: Claimant, resource: Resource): boolean {
  if (place instanceof OutsideClaim) return place.station !== null;
  const lead = place instanceof SidePlace ? place.lead : place;
  return (
    lead.equipment !== null ||
    crewShifts.some(({ crew }) => crew === resource) ||
    place.asked.equipmentNeeds.some(({ resource: { shared } }) => shared!.pieces.length > 0)
  );
}
