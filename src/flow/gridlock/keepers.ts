import { isAtWork, type Team, wantedBy } from '../claims/teams.js';
import type { Unit } from '../floor/unit.js';
import { STOCK, SUPPLY } from '../model/resources.js';
import type { Alive } from './alive.js';
import { standsAt } from './floor.js';
import type { Want } from './wants.js';

/** A unit that has some of a crew or some carriers and can never give them back. */
interface Keeper {
  readonly unit: Unit;
  readonly amount: number;
}

/** Most that can ever be free at once for a claim: all but what stays with those that cannot go on. */
export function mostFor(alive: Alive, want: Want): number {
  const { resource, own } = want,
    { kind, amount, free, supply, feeder } = resource;
  const kept = (position?: number): number => {
    let sum = 0;
    for (const keeper of keepersOf(alive, want, position)) sum += keeper.amount;
    return sum;
  };
  switch (kind) {
    case STOCK:
      return (
        free +
        (feeder === null ? Infinity : alive.floor.inMaking(feeder).filter((part) => alive.goes(part)).length)
      );
    case SUPPLY:
      return supply!.isPlanned && !supply!.hasMore ? free : Infinity;
    default: {
      const shifts = alive.run.crewShifts.find(({ crew, waits }) => waits && crew === resource);
      if (shifts === undefined) return amount - kept();
      const left = shifts.most.map((people, position) => people - kept(position));
      return own === undefined ? Math.max(...left) : left[own.unit.teamShift[own.companion.id]];
    }
  }
}

/**
 * Who never gives any of a resource back; where teams wait for their own shift, to one of its position alone.
 */
export function* keepersOf(alive: Alive, want: Want, position?: number): Iterable<Keeper> {
  const { resource } = want,
    { shop } = alive.run;
  if (resource.mayFallShort) yield* teamsThatKeep(alive, want, position);
  else
    for (const companion of shop.companions)
      if (companion.resource === resource)
        for (const unit of alive.floor.keepers)
          if ((unit.companionBits & companion.bit) !== 0 && !alive.goes(unit))
            yield { unit, amount: companion.amount };
  for (const place of shop.places)
    if (place.holdsCrew && !alive.goesAt(place))
      for (const need of place.unit!.step.asked.needs)
        if (need.resource === resource) yield { unit: standsAt(place), amount: need.amount };
}

/**
 * Of a crew whose people change, teams that are surely staffed wherever there are people for the claim. They
 * take no more than it, and no team of who can still go on goes before them: none that was claimed earlier
 * or, where the unit has no work for its team, none at all, and none can be formed of fewer. The claim's own
 * team is with it, and those behind that are not in its way.
 */
function* teamsThatKeep(alive: Alive, { resource, amount, own }: Want, position?: number): Iterable<Keeper> {
  const claimed = amount + (own?.companion.amount ?? 0),
    idle: Team[] = [];
  if (own !== undefined) yield { unit: own.unit, amount: own.companion.amount };
  for (const team of alive.floor.teams(resource)) {
    const { unit, companion } = team;
    if (position !== undefined && unit.teamShift[companion.id] !== position) continue;
    if (unit === own?.unit || alive.goes(unit)) return;
    if (wantedBy(team) > claimed) continue;
    if (isAtWork(team)) yield { unit, amount: companion.amount };
    else idle.push(team);
  }
  const formed = alive.run.shop.companions.filter((companion) => companion.resource === resource),
    least = Math.min(...formed.map((companion) => companion.amount));
  for (const { unit, companion } of idle)
    if (companion.amount <= least) yield { unit, amount: companion.amount };
}
