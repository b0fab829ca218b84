import type { Active } from '../accounts/active-periods.js';
import type { OutsideClaim } from '../claims/outside.js';
import type { Model } from '../model/model.js';
import type { PulseLine } from '../traffic/pulse-lines.js';
import { Buffer } from './buffer.js';
import type { Equipment } from './equipment.js';
import { finishActive } from './ledger.js';
import {
  ACCOUNT_SHIFT,
  ACTIVE_MINUTES,
  ACTIVE_PERIODS,
  ACTIVE_SINCE,
  B_CALENDAR,
  B_FREE_PLACE,
  B_LONG_WAY,
  B_PLACES,
  BUFFER_SHIFT,
  type Memory,
  NOWHERE,
} from './memory.js';
import { Place } from './place.js';
import { OFF_SHIFT, STATE_COUNT } from './states.js';
import type { Unit } from './unit.js';
import type { Units } from './units.js';

/** A station: places, the buffer ahead, and what a lot needs. */
export class Station implements Active {
  readonly places: Place[] = [];
  /** Those that are there only from some day on, in order. */
  private comingPlaces: Place[] = [];

  // Lots: whether one gathers (it does not while one is inside), its units, its first place, when it is due.
  lotGathered = 0;
  lotOpen = true;
  lotInside = 0;
  lotLead: Place | null = null;
  lotDue = NaN;
  /** A timer of it is in the event queue; when it comes, the next is set. */
  lotTimerSet = false;
  lotListed = false;
  /** What can fail, in the order of the places; empty: nothing. A station with lots has one piece. */
  equipment: readonly Equipment[] = [];
  /** Claims of units that wait for more than a place, in order, and of these the unit whose turn it is. */
  readonly asking: OutsideClaim[] = [];
  turn: Unit | null = null;
  /** The pulse line that it is part of. */
  line: PulseLine | null = null;
  readonly name: string;
  /** Id, -1 always. */
  readonly calendar: number;
  /** Its places are set up for values of an option, or for settings. */
  readonly isSetUp: boolean;
  lotMost: number;

  constructor(
    readonly id: number,
    { stations: columns }: Model,
    readonly buffer: Buffer,
    private readonly memory: Memory,
    private readonly units: Units,
  ) {
    this.name = columns.names[id];
    this.calendar = columns.calendar[id];
    this.isSetUp = columns.changeoverValues[id].length > 0;
    this.lotMost = columns.lotMost[id];
  }

  /** The places, made once; all free, the first one on top. */
  furnish(firstId: number, count: number): readonly Place[] {
    for (let p = 0; p < count; p++) this.places.push(new Place(firstId + p, this, this.memory, this.units));
    const { ints } = this.memory,
      { at } = this.buffer;
    ints[at + B_PLACES] = count;
    ints[at + B_CALENDAR] = this.calendar;
    ints[at + B_LONG_WAY] = Number(this.goesLongWay);
    return this.places;
  }

  /** Places there and still to come: what its account adds to. */
  get placeCount(): number {
    return this.places.length + this.comingPlaces.length;
  }

  /** At the start of a run: only so many places are there. All must be free. */
  withhold(count: number): void {
    this.comingPlaces = this.places.splice(count);
    for (const place of this.comingPlaces) {
      this.takeFree(place);
      place.isThere = false;
      place.enter(OFF_SHIFT, -1);
    }
    this.memory.ints[this.buffer.at + B_PLACES] = count;
  }

  /**
   * The first of the places to come are there, so that the number is `count`; the caller puts them to use.
   */
  bring(count: number): Place[] {
    const brought = this.comingPlaces.splice(0, count - this.places.length);
    // With a place that is not at work the station is not active.
    if (brought.length > 0) this.finishActive();
    this.memory.ints[this.buffer.at + B_PLACES] = count;
    for (const place of brought) {
      place.isThere = true;
      this.places.push(place);
    }
    return brought;
  }

  /** A unit that was blocked in one of its places leaves it the long way, and so is the place filled. */
  leaveTheLongWay(): void {
    this.memory.ints[this.buffer.at + B_LONG_WAY] = 1;
  }

  /** Its places are given away the long way: to a lot, or by what they are set up for. */
  get goesLongWay(): boolean {
    return this.lotMost > 0 || this.isSetUp || this.line !== null;
  }

  get freePlace(): Place | null {
    return this.units.placeAt(this.memory.ints[this.buffer.at + B_FREE_PLACE]);
  }
  set freePlace(place: Place | null) {
    this.memory.ints[this.buffer.at + B_FREE_PLACE] = place?.at ?? NOWHERE;
  }

  /** A place comes free: it is the first to be taken. */
  putFree(place: Place): void {
    place.nextFree = this.freePlace;
    this.freePlace = place;
  }

  /** A free place, out of the free ones. */
  takeFree(place: Place): Place {
    let before: Place | null = null;
    for (let free = this.freePlace!; free !== place; free = free.nextFree!) before = free;
    if (before === null) this.freePlace = place.nextFree;
    else before.nextFree = place.nextFree;
    return place;
  }

  /** Minutes by state, over all places. */
  get account(): Float64Array {
    return this.memory.floats.subarray(this.accountAt, this.accountAt + STATE_COUNT);
  }

  get activePeriods(): number {
    return this.memory.floats[this.accountAt + ACTIVE_PERIODS];
  }

  get activeMinutes(): number {
    return this.memory.floats[this.accountAt + ACTIVE_MINUTES];
  }

  get isActive(): boolean {
    return this.memory.floats[this.accountAt + ACTIVE_SINCE] >= 0;
  }

  activeMinutesBetween(begin: number, now: number): number {
    return this.memory.worked(this.calendar, begin, now);
  }

  finishActive(): void {
    finishActive(this.memory, this.buffer.at);
  }

  /** Observation starts afresh. */
  clear(): void {
    const { floats, now } = this.memory,
      at = this.accountAt;
    this.account.fill(0);
    this.buffer.clear();
    floats[at + ACTIVE_PERIODS] = 0;
    floats[at + ACTIVE_MINUTES] = 0;
    if (floats[at + ACTIVE_SINCE] >= 0) floats[at + ACTIVE_SINCE] = now;
  }

  private get accountAt(): number {
    return this.memory.accounts + ((this.buffer.at - this.memory.buffers) >> (BUFFER_SHIFT - ACCOUNT_SHIFT));
  }
}

/** Builds all stations with their places and the buffers ahead; places are numbered through in `places`. */
export function buildStations(model: Model, places: Place[], memory: Memory, units: Units): Station[] {
  const { names, buffer: spaces, reworkBuffer, site, places: counts } = model.stations;
  return names.map((_, s) => {
    const buffer = new Buffer(s, spaces[s], reworkBuffer[s], site[s], memory, units),
      station = (buffer.station = new Station(s, model, buffer, memory, units));
    for (const place of station.furnish(places.length, counts[s])) places.push(place);
    return station;
  });
}
