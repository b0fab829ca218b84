import type { Resource } from '../claims/resource.js';
import { wantedBy } from '../claims/teams.js';
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
export function mostFor(alive: Alive, { resource, amount: wanted }: Want): number {
  const { kind, amount, free, supply, feeder } = resource;
  const kept = (position?: number): number => {
    let sum = 0;
    for (const keeper of keepersOf(alive, resource, wanted, position)) sum += keeper.amount;
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
      const own = alive.run.crewShifts.find(({ crew, waits }) => waits && crew === resource);
      return own === undefined
        ? amount - kept()
        : Math.max(...own.most.map((people, position) => people - kept(position)));
    }
  }
}

/**
 * Who never gives any of a resource back. A team for which a shift has too few people leaves those who are
 * there to a claim for fewer (`wanted`); one that waits for its own shift has nobody of another (`position`).
 */
export function* keepersOf(
  alive: Alive,
  resource: Resource,
  wanted: number,
  position?: number,
): Iterable<Keeper> {
  const {
    run: { shop },
    floor,
  } = alive;
  for (const companion of shop.companions)
    if (companion.resource === resource)
      for (const unit of floor.keepers)
        if (
          (unit.companionBits & companion.bit) !== 0 &&
          (position === undefined || unit.teamShift[companion.id] === position) &&
          !alive.goes(unit) &&
          !(resource.mayFallShort && wantedBy({ unit, companion }) > wanted)
        )
          yield { unit, amount: companion.amount };
  for (const place of shop.places)
    if (place.holdsCrew && !alive.goesAt(place))
      for (const need of place.unit!.step.needs)
        if (need.resource === resource) yield { unit: standsAt(place), amount: need.amount };
}
