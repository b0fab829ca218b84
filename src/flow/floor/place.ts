import type { Asked } from '../claims/asked.js';
import type { Claimant } from '../claims/outside.js';
import type { Run } from '../run.js';
import type { Equipment } from './equipment.js';
import { enterState, settlePlace } from './ledger.js';
import {
  type Memory,
  NOWHERE,
  P_BUFFER,
  P_CALENDAR,
  P_NEXT_FREE,
  P_PASS,
  P_PHASE,
  P_STATE,
  P_UNIT,
  PLACE_SHIFT,
} from './memory.js';
import type { SidePlace } from './side-place.js';
import { BLOCKED, WAIT_REST } from './states.js';
import type { Station } from './station.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';
import type { Units } from './units.js';

/** A spot in which one unit stands: a view on its record. */
export class Place {
  readonly at: number;
  /** Holds the people and the equipment of its step, of the latter what is `wanted`. */
  holdsCrew = false;
  /** Work of the present or coming phase. */
  minutes = NaN;
  /** When it asked for the needs that it waits for. */
  askedAt = NaN;
  /** Of its request: in the order of claims, the first team that does its work; Infinity: it has none. */
  teamOrder = Infinity;
  /** When it began to want what it waits for. */
  wantedSince = NaN;
  /** Behind it among those that wait for the same needs. */
  nextWaiting: Claimant | null = null;
  /** Value of the station's changeover option, or setting, last worked on; -1 none yet. */
  lastValue = -1;
  /** Units (lots) of that value in a row, counted anew after the most of a batch. */
  inRow = 0;
  /** How many times the step had been begun with this one, for learning. */
  attempt = 0;
  /** What was going on is broken off, and how much of it is left, see `timing.ts`. */
  isSuspended = false;
  minutesLeft = NaN;
  /** What of it can fail; null: nothing. */
  equipment: Equipment | null = null;
  /** False until the day from which on it is there: until then it is off shift, and no unit can take it. */
  isThere = true;
  /** While it is down: the state that it would be in; -1 while it is up. */
  stateIfUp = -1;
  /** Its task was broken off as it went down, and is to be taken up when it is up. */
  isBroken = false;
  /** When what it waited for would have come, had it not gone down. */
  wokenAt = NaN;
  /** Supplies that its request lacks, a bit for each of the step's. */
  lackedSupplies = 0;
  /** Equipment that its request lacks, a bit for each of the step's. */
  lackedEquipment = 0;
  /** Bits of the needs of a part of the work that are needed now. */
  wanted = 0;
  /** Pieces of equipment that can fail and that it has. */
  readonly pieces: Equipment[] = [];
  /**
   * Work with equipment for a part of it: its minutes, those done when the present stretch began and when it
   * ends, and by equipment of the step those at which it is given back or claimed.
   */
  parts: { readonly total: number; from: number; to: number; readonly turns: number[] } | null = null;
  /** Where steps side by side are done; as many as the largest group of the station has. */
  readonly sides: SidePlace[] = [];
  /** What the inspection decided, and where the unit is sent back to after the repair. */
  outcome = 0;
  sendTo: Step | null = null;

  constructor(
    readonly id: number,
    readonly station: Station,
    private readonly memory: Memory,
    private readonly units: Units,
  ) {
    const at = (this.at = memory.places + (id << PLACE_SHIFT)),
      { ints } = memory;
    ints[at + P_UNIT] = NOWHERE;
    ints[at + P_BUFFER] = station.buffer.at;
    ints[at + P_CALENDAR] = station.calendar;
    ints[at + P_NEXT_FREE] = NOWHERE;
  }

  get unit(): Unit | null {
    const unit = this.memory.ints[this.at + P_UNIT];
    return unit === NOWHERE ? null : this.units.at(unit);
  }
  set unit(unit: Unit | null) {
    this.memory.ints[this.at + P_UNIT] = unit?.at ?? NOWHERE;
  }

  get phase(): number {
    return this.memory.ints[this.at + P_PHASE];
  }
  set phase(phase: number) {
    this.memory.ints[this.at + P_PHASE] = phase;
  }

  /** Passes done of the present step. */
  get pass(): number {
    return this.memory.ints[this.at + P_PASS];
  }
  set pass(pass: number) {
    this.memory.ints[this.at + P_PASS] = pass;
  }

  get nextFree(): Place | null {
    return this.units.placeAt(this.memory.ints[this.at + P_NEXT_FREE]);
  }
  set nextFree(place: Place | null) {
    this.memory.ints[this.at + P_NEXT_FREE] = place?.at ?? NOWHERE;
  }

  get state(): number {
    return this.memory.ints[this.at + P_STATE];
  }

  get isDown(): boolean {
    return this.stateIfUp >= 0;
  }

  /** Its unit has no room ahead, whether the place is up or down. */
  get isDone(): boolean {
    return (this.isDown ? this.stateIfUp : this.state) === BLOCKED;
  }

  /** What the unit claims there. */
  get asked(): Asked {
    return this.askedOf(this.unit!);
  }

  /** The same, where the unit is known. */
  askedOf({ step }: Unit): Asked {
    return this.phase === WAIT_REST ? step.rest! : step.asked;
  }

  /** It has what it asked for. */
  grant(run: Run): void {
    run.granted.push(this);
  }

  /** Goes into a state governed by a calendar, -1 always. */
  enter(state: number, calendar: number): void {
    enterState(this.memory, this.at, state, calendar);
  }

  /** A state without people of a step: the station's calendar governs it. */
  idle(state: number): void {
    this.enter(state, this.station.calendar);
  }

  /** The same state as another place. */
  mirror(lead: Place): void {
    enterState(this.memory, this.at, lead.state, this.memory.ints[lead.at + P_CALENDAR]);
  }

  settle(): void {
    settlePlace(this.memory, this.at);
  }
}
