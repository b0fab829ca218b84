import { isToClaim } from '../claims/carriers.js';
import type { Resource } from '../claims/resource.js';
import type { Team } from '../claims/teams.js';
import type { Place } from '../floor/place.js';
import { WAIT_NEEDS } from '../floor/states.js';

/** One thing that a claim wants, and how much of it. */
export interface Want {
  readonly resource: Resource;
  readonly amount: number;
  /** People besides those of this team, which is with the unit. */
  readonly own?: Team | undefined;
}

/** Teams that are with the unit, do its work, and may be without people. */
export function ownTeams({ unit }: Place): Team[] {
  const { real, step } = unit!;
  return step.teams
    .filter(({ bit }) => (real.companionBits & bit) !== 0)
    .map((companion) => ({ unit: real, companion }));
}

/** All that the claim at a place asks for, own parts left out; once its step has begun, people alone. */
export function wantsOf(place: Place): Want[] {
  const { unit, phase } = place,
    { step } = unit!,
    wants = new Map<Resource, number>();
  const add = ({ resource, amount }: Want): void => {
    wants.set(resource, (wants.get(resource) ?? 0) + amount);
  };
  for (const need of step.needs) if (phase === WAIT_NEEDS || need.resource.isCrew) add(need);
  if (phase === WAIT_NEEDS)
    for (const companion of step.companions) if (isToClaim(unit!, step, companion)) add(companion);
  const teams = ownTeams(place);
  return Array.from(wants, ([resource, amount]) => ({
    resource,
    amount,
    own: teams.find(({ companion }) => companion.resource === resource),
  }));
}
