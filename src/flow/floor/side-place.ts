import type { Model } from '../model/model.js';
import { type Memory, NOWHERE, P_CALENDAR, P_STATE } from './memory.js';
import { Place } from './place.js';
import { rank } from './states.js';
import type { Station } from './station.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';
import type { Units } from './units.js';

/**
 * Where one of several steps side by side is done: in a place, by a shadow of the unit that stands there. Its
 * time is in no account; the place shows the state of the side that has most going on, the first listed among
 * equals.
 */
export class SidePlace extends Place {
  /** The step is still to be begun; it has been begun and is not over. */
  isDue = false;
  isGoing = false;
  readonly shadow: Unit;

  constructor(
    id: number,
    station: Station,
    private readonly records: Memory,
    units: Units,
    readonly lead: Place,
  ) {
    super(id, station, records, units);
    this.shadow = units.make();
  }

  begin(unit: Unit, step: Step): void {
    this.isDue = false;
    this.isGoing = true;
    this.unit = this.shadow;
    // No state before the step is looked at, so that none is shown.
    this.records.ints[this.at + P_STATE] = NOWHERE;
    this.shadow.follow(unit, step, this);
  }

  finish(): void {
    this.isGoing = false;
    this.unit = null;
  }

  override enter(state: number, calendar: number): void {
    const { ints } = this.records;
    ints[this.at + P_STATE] = state;
    ints[this.at + P_CALENDAR] = calendar;
    showSides(this.lead);
  }

  override settle(): void {
    // The lead's time is booked.
  }
}

/** Gives each place the sides that its station needs; they are numbered after all places. */
export function buildSides(
  { sideBySide }: Model,
  stations: readonly Station[],
  places: Place[],
  memory: Memory,
  units: Units,
): void {
  for (const station of stations)
    for (const place of station.places)
      for (let s = 0; s < sideBySide.most[station.id]; s++) {
        const side = new SidePlace(places.length, station, memory, units, place);
        place.sides.push(side);
        places.push(side);
      }
}

/** The place goes into the state of its side with most going on; it keeps its state where there is none. */
export function showSides(lead: Place): void {
  let best: SidePlace | null = null;
  for (const side of lead.sides)
    if (side.isGoing && side.state !== NOWHERE && (best === null || rank(side.state) < rank(best.state)))
      best = side;
  if (best !== null) lead.mirror(best);
}
