import type { Place } from '../floor/place.js';
import { DOWN, STARVED, WAIT_NEEDS } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { placeFor } from '../tasks/changeovers.js';
import type { Asked } from './asked.js';

/** Who waits in the line of claims: a unit in a place, or one outside. */
export type Claimant = Place | OutsideClaim;

/** What a unit asks for that stands in no place of its step: a kit, or all but the crew of a step. */
export class OutsideClaim {
  readonly phase = WAIT_NEEDS;
  askedAt = NaN;
  nextWaiting: Claimant | null = null;
  lackedSupplies = 0;
  /** It asks for no equipment: that is claimed at the place. */
  lackedEquipment = 0;
  readonly wanted = 0;
  wantedSince = NaN;
  teamOrder = Infinity;
  /** What it lacked when it was looked at last while a place was free. */
  short = STARVED;
  /** The place that it was given together with what it asked for. */
  place: Place | null = null;

  /** @param station of which it wants a place too; null: none, it is a kit */
  constructor(
    readonly unit: Unit,
    readonly asked: Asked,
    readonly station: Station | null,
  ) {}

  /** Behind the ids of places: of equals, who stands in a place goes first. */
  get id(): number {
    return this.unit.at;
  }

  askedOf(): Asked {
    return this.asked;
  }

  /** It is passed over while no place is free, or while others are to be called ahead of it. */
  get isDown(): boolean {
    const { station, unit } = this;
    if (station === null) return false;
    return (
      station.freePlace === null || station.buffer.listed || (station.turn !== null && station.turn !== unit)
    );
  }

  /** A place that stays free for want of what the unit lacks shows it. */
  idle(state: number): void {
    if (this.station === null || state === DOWN) return;
    this.short = state;
    showShort(this.station);
  }

  /** It has what it asked for, and a place is kept for it. */
  grant(run: Run): void {
    const { station, unit } = this;
    if (station !== null) {
      const wanted = station.isSetUp ? placeFor(run, unit, station) : null;
      this.place = station.takeFree(wanted ?? station.freePlace!);
      showShort(station);
    }
    // The last of the list goes first, and these go in the order in which they are granted.
    run.granted.unshift(this);
    run.pending = true;
  }
}

/** Each place that is free while somebody asks for more than a place is short of that; others are starved. */
export function showShort(station: Station): void {
  let free = station.freePlace;
  for (const { place, short } of station.asking) {
    if (free === null) return;
    if (place !== null) continue;
    free.idle(short);
    free = free.nextFree;
  }
  for (; free !== null; free = free.nextFree) free.idle(STARVED);
}
