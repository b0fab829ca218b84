import type { Claimant } from '../claims/outside.js';
import type { Pool, Resource } from '../claims/resource.js';
import { type Team, teamsOf } from '../claims/teams.js';
import type { Place } from '../floor/place.js';
import { SidePlace } from '../floor/side-place.js';
import { SIDE_BY_SIDE } from '../floor/states.js';
import type { Route } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Truck } from '../traffic/lane.js';

/** Who is where, looked up once for all questions about a standstill. */
export class Floor {
  /** Units and sub-assemblies on the floor, in trucks and outside. */
  readonly units: readonly Unit[];
  /** Sub-assemblies in the making. */
  private readonly making = new Map<Route, Unit[]>();
  private readonly aboard = new Map<Truck, Unit[]>();
  /** Units with a carrier or a team. */
  readonly keepers: readonly Unit[];
  private readonly teamsBy = new Map<Resource, readonly Team[]>();
  /** Places whose claim is not met: the one ahead in the same line of claims, null for the first. */
  private readonly claims = new Map<Claimant, Claimant | null>();

  constructor(readonly run: Run) {
    this.units = run.units.all.filter(({ alive }) => alive);
    for (const unit of this.units) {
      const { route } = unit.step;
      if (!route.isMain) entry(this.making, route).push(unit);
      if (unit.truck !== null) entry(this.aboard, unit.truck).push(unit);
    }
    this.keepers = this.units.filter(({ companionBits }) => companionBits !== 0);
    for (const pool of new Set(run.shop.steps.map(({ asked }) => asked.pool)))
      if (pool !== null) this.line(pool);
  }

  inMaking(route: Route): readonly Unit[] {
    return this.making.get(route) ?? [];
  }

  /** Teams of a crew, in the order in which they were claimed. */
  teams(crew: Resource): readonly Team[] {
    const known = this.teamsBy.get(crew) ?? teamsOf(this.run, crew);
    this.teamsBy.set(crew, known);
    return known;
  }

  on(truck: Truck): readonly Unit[] {
    return this.aboard.get(truck) ?? [];
  }

  /** Whether what the place claims is not there. */
  claimsAt(place: Claimant): boolean {
    return this.claims.has(place);
  }

  /** Claims that go before that of a place. */
  *ahead(place: Claimant): Iterable<Claimant> {
    for (let at = this.claims.get(place) ?? null; at !== null; at = this.claims.get(at) ?? null) yield at;
  }

  /** Own parts of a unit that are off and that its step wants back; null stands for one not found. */
  ownParts({ real: unit, ownOff, step }: Unit): (Unit | null)[] {
    const wanted = ownOff & step.asked.ownParts;
    if (wanted === 0) return [];
    return this.run.shop.routes
      .filter(({ ownBit }) => (wanted & ownBit) !== 0)
      .map((route) => this.inMaking(route).find(({ parent }) => parent === unit) ?? null);
  }

  private line({ head }: Pool): void {
    let before: Claimant | null = null;
    for (let place = head; place !== null; place = place.nextWaiting) {
      this.claims.set(place, before);
      before = place;
    }
  }
}

/** Where the unit of a place is at work or claims: sides at which steps go on, the lead of its lot, or it. */
export function taskPlaces(place: Place): readonly Place[] {
  const { station, phase, sides } = place;
  if (station.lotMost > 0) return [station.lotLead!];
  return phase === SIDE_BY_SIDE ? sides.filter(({ isGoing }) => isGoing) : [place];
}

/** The unit that stands there; of a side, that of its place. */
export const standsAt = (place: Claimant): Unit =>
  place instanceof SidePlace ? place.lead.unit! : place.unit!;

function entry<K, V>(map: Map<K, V[]>, key: K): V[] {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made: V[] = [];
  map.set(key, made);
  return made;
}
