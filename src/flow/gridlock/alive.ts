import { isToBegin } from '../claims/claims.js';
import { type Claimant, OutsideClaim } from '../claims/outside.js';
import type { Buffer } from '../floor/buffer.js';
import type { Place } from '../floor/place.js';
import { EMPTYING, UNLOADING, WAIT_DOCK } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Truck } from '../traffic/lane.js';
import type { PulseLine } from '../traffic/pulse-lines.js';
import { Floor, taskPlaces } from './floor.js';
import { mostFor } from './keepers.js';
import { mayStepAside, type Want, wantsOf } from './wants.js';

/**
 * Which units can still go on, whatever else happens: the least set that holds everything with an event of
 * its own (work, a repair, a trip, a shift to come) and everything that waits for what one of the set can
 * give it. Any one of several givers will do for a need; all needs must be met, in their amounts. Nobody
 * outside the set can move again, since what they wait for is with others outside it. What the rules leave
 * open (a lot that gathers, a truck at base: rule 16) counts as going on. The fixed point is that of deadlock
 * detection in the AND-OR model (Knapp 1987, ACM Computing Surveys 19, 303-328; from memory).
 */
export class Alive {
  readonly floor: Floor;
  /** By place and by truck: what is there can go on. */
  private readonly places: Uint8Array;
  private readonly trucks: Uint8Array;
  /** Those who wait outside their places for more than room, and can get it. */
  private readonly asking = new Set<Unit>();

  /** @param last nothing at all moves any more: neither lots nor trucks go with what they have */
  constructor(
    readonly run: Run,
    private readonly last = false,
  ) {
    this.floor = new Floor(run);
    this.places = new Uint8Array(run.shop.places.length);
    this.trucks = new Uint8Array(run.shop.trucks.length);
    if (!last) this.spread();
  }

  /** Units and sub-assemblies that can never go on; nobody while a change is ahead, which may help anyone. */
  get dead(): Unit[] {
    if (this.run.changesAt < Infinity) return [];
    return this.floor.units.filter((unit) => !this.goes(unit));
  }

  goes(unit: Unit): boolean {
    const { place, truck, step } = unit;
    if (place !== null) return this.places[place.id] === 1;
    if (unit.asks !== null && !this.asking.has(unit)) return false;
    if (truck === null || truck.phase === EMPTYING) return this.givesRoom(step.buffer);
    return this.trucks[truck.id] === 1;
  }

  /** What is claimed at a place, or done there, can go on; nobody stands there, or can leave. */
  goesAt(place: Claimant): boolean {
    if (place instanceof OutsideClaim) return this.asking.has(place.unit);
    return place.unit === null ? !this.last : this.places[place.id] === 1;
  }

  /** Whether a place or a space can still come free there. */
  givesRoom({ lane, station }: Buffer): boolean {
    if (lane !== null) return lane.trucks.some(({ id }) => this.trucks[id] === 1);
    const { line, lotMost, lotOpen, places } = station!;
    if (line !== null) return this.moves(line);
    if (lotMost === 0) return places.some((place) => this.goesAt(place));
    // The next lot gathers when all of this one are out.
    return (lotOpen && !this.last) || places.every((place) => place.unit === null || this.goesAt(place));
  }

  /** Whether the line can still move: whoever is not done can go on, and the last one has room. */
  moves(line: PulseLine): boolean {
    return line.stations.every(({ places: [place] }) =>
      place.isDone ? place.station !== line.last || this.mayLeave(line) : this.goesAt(place),
    );
  }

  /** Whether the unit that is done at the end of the line has room, or can still get it. */
  mayLeave({ leaving, waitsForRoom, last }: PulseLine): boolean {
    if (leaving === null || this.givesRoom(leaving.buffer)) return true;
    // It has not asked yet.
    return !waitsForRoom && leaving.buffer.takesIn(last.places[0].unit!);
  }

  /** Of what is claimed at a place, what can never be there for it. */
  unmet(place: Claimant): Want[] {
    return wantsOf(place).filter(
      (want) => mostFor(this, want) < want.amount || this.shutBy(place, want) !== null,
    );
  }

  /** A claim ahead that never gets what this one wants too, and so keeps it from it for ever; null: none. */
  shutBy(place: Claimant, { resource }: Want): Claimant | null {
    for (const other of this.floor.ahead(place))
      if (
        !this.goesAt(other) &&
        (this.last || !mayStepAside(this.run, other, resource)) &&
        wantsOf(other).some((want) => want.resource === resource && mostFor(this, want) < want.amount)
      )
        return other;
    return null;
  }

  private spread(): void {
    const { shop } = this.run,
      // Those further along the route first: room comes free from there.
      places = shop.places.filter(({ unit }) => unit !== null).reverse();
    const add = (marks: Uint8Array, id: number, goes: boolean): boolean => {
      if (goes) marks[id] = 1;
      return goes;
    };
    const asking = this.floor.units.filter(({ asks }) => asks !== null);
    for (let grows = true; grows; ) {
      grows = false;
      for (const unit of asking)
        if (!this.asking.has(unit) && this.isMet(unit.asks!)) {
          this.asking.add(unit);
          grows = true;
        }
      for (const place of places)
        if (this.places[place.id] === 0 && add(this.places, place.id, this.placeGoes(place))) grows = true;
      for (const truck of shop.trucks)
        if (this.trucks[truck.id] === 0 && add(this.trucks, truck.id, this.truckGoes(truck))) grows = true;
    }
  }

  private placeGoes(place: Place): boolean {
    const { station } = place;
    if (place.isDone) {
      const unit = place.unit!;
      if (station.line !== null) return this.moves(station.line);
      return (unit.asks === null || this.asking.has(unit)) && this.givesRoom(unit.step.buffer);
    }
    if (station.lotMost > 0 && station.lotOpen) return true;
    return taskPlaces(place).every((at) => (at === place ? this.taskGoes(at) : this.places[at.id] === 1));
  }

  /** What is done there has an event of its own, waits for a shift or a repair, or its claim can be met. */
  private taskGoes(place: Place): boolean {
    return !this.floor.claimsAt(place) || this.isMet(place);
  }

  /** What is claimed can be there at some time; a claim of which all is there already is out of its line. */
  private isMet(place: Claimant): boolean {
    const own = isToBegin(place.phase) ? this.floor.ownParts(place.unit!) : [];
    return own.every((part) => part === null || this.goes(part)) && this.unmet(place).length === 0;
  }

  private truckGoes(truck: Truck): boolean {
    switch (truck.phase) {
      case WAIT_DOCK:
        return truck.lane.trucks.some(
          ({ id, phase }) => (phase === UNLOADING || phase === EMPTYING) && this.trucks[id] === 1,
        );
      case EMPTYING:
        return this.floor.on(truck).every((unit) => this.goes(unit));
      default:
        return true;
    }
  }
}
