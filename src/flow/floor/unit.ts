import type { PartDefects } from '../claims/joins.js';
import type { OutsideClaim } from '../claims/outside.js';
import type { Model } from '../model/model.js';
import type { Lane, Truck } from '../traffic/lane.js';
import {
  type Memory,
  NOWHERE,
  U_FIRST,
  U_LOCATION,
  U_NUMBER,
  U_PLACE,
  U_REWORK,
  U_STEP,
  UNIT_SHIFT,
} from './memory.js';
import type { Place } from './place.js';
import type { Step } from './step.js';
import type { Units } from './units.js';

// Most models have no defects and no options; an array costs much to make even without entries.
const NO_BYTES = new Uint8Array(0),
  NO_TARGETS = new Int32Array(0),
  NO_NOTES = new Uint16Array(0),
  NO_LOOPS = new Uint32Array(0);

/** In `claimedAt`: not yet. */
export const NOT_CLAIMED = -1;

/** A unit, or a sub-assembly: that is a unit whose route is a feeder. Used again when a unit has left. */
export class Unit {
  readonly at: number;
  private readonly memory: Memory;
  alive = false;
  truck: Truck | null = null;
  /** The lane in whose arrival bank without a limit it stands; null: in none. */
  arrivedBy: Lane | null = null;
  /** When it joined the bank, or the buffer of a station with batches, it is in. */
  queuedAt = NaN;
  /** Entry into the first buffer or place. */
  born = NaN;
  parent: Unit | null = null;
  /** Late if shipped after it; Infinity: not due. */
  dueAt = NaN;
  /** Own parts that are off the unit, a bit a feeder. */
  ownOff = 0;
  /** Bits of what stays with it: carriers, teams. */
  companionBits = 0;
  /** Those of them that are teams without people at present. */
  unstaffed = 0;
  /** Slots not clean, and those of them found. */
  notClean = 0;
  found = 0;
  /** Items found and left open. */
  noted = 0;
  /** Id of the last step that it does again when it comes to it: the furthest one that sent it back; -1. */
  againTo = -1;
  /** The hold at which it is, or to which it is on its way, and since when; NaN. */
  heldAt: Step | null = null;
  heldSince = NaN;
  /** By route: what own parts that are back bring along; null if none did. */
  brought: (PartDefects | null)[] | null = null;
  /** Its claim while it waits outside for a kit, or ahead of a station for more than a place; null. */
  asks: OutsideClaim | null = null;
  /** What its step takes was claimed ahead, just now. */
  isReady = false;
  /** Of a unit of the opening: minutes done already of the step with this id. */
  done = 0;
  doneAt = -1;
  /** The unit that a shadow stands for; itself. */
  real: Unit = this;
  readonly options: Uint8Array;
  readonly slots: Uint8Array;
  /** Id of the step that mends a found slot; of an open one, that at which it came with a part. */
  readonly slotTarget: Int32Array;
  /** By slot: 1 + the find by which it was noted; 0: not noted. */
  readonly notes: Uint16Array;
  /** Times sent back by each `then` row. */
  readonly loops: Uint32Array;
  /** By companion: id of the step at which it was claimed last; NOT_CLAIMED. */
  readonly claimedAt: Int32Array;
  /** By team: which in the order of claims of its crew, and the position of the shift that claimed it. */
  readonly teamOrder: Int32Array;
  readonly teamShift: Int32Array;
  /** By inspection: 0 not seen yet; at its first visit 1 nothing was found, 2 something was. */
  readonly seen: Uint8Array;

  constructor(
    id: number,
    private readonly units: Units,
    { options, slots, thens, companions }: Model,
    inspections: number,
  ) {
    this.memory = units.memory;
    this.at = units.memory.units + (id << UNIT_SHIFT);
    this.options = options.length > 0 ? new Uint8Array(options.length) : NO_BYTES;
    this.slots = slots.count > 0 ? new Uint8Array(slots.count) : NO_BYTES;
    this.slotTarget = slots.count > 0 ? new Int32Array(slots.count) : NO_TARGETS;
    this.notes = slots.count > 0 ? new Uint16Array(slots.count) : NO_NOTES;
    this.loops = thens.count > 0 ? new Uint32Array(thens.count) : NO_LOOPS;
    this.claimedAt = companions.count > 0 ? new Int32Array(companions.count) : NO_TARGETS;
    this.teamOrder = companions.count > 0 ? new Int32Array(companions.count) : NO_TARGETS;
    this.teamShift = companions.count > 0 ? new Int32Array(companions.count) : NO_TARGETS;
    this.seen = inspections > 0 ? new Uint8Array(inspections) : NO_BYTES;
  }

  /** Build number from 1; of a sub-assembly its running number, of own parts that of their unit. */
  get number(): number {
    return this.memory.ints[this.at + U_NUMBER];
  }

  get step(): Step {
    return this.units.stepAt(this.memory.ints[this.at + U_STEP]);
  }
  set step(step: Step) {
    this.memory.ints[this.at + U_STEP] = step.at;
  }

  /** Where it stands; null in a buffer, in a truck, in an arrival bank without a limit, or outside. */
  get place(): Place | null {
    return this.units.placeAt(this.memory.ints[this.at + U_PLACE]);
  }
  set place(place: Place | null) {
    this.memory.ints[this.at + U_PLACE] = place?.at ?? NOWHERE;
  }

  /** Goes first in buffers: from a send-back until it stands at the step it was sent to. */
  set first(first: boolean) {
    this.memory.ints[this.at + U_FIRST] = first ? 1 : 0;
  }

  /** The inspection that sent it back and that it has not reached again. */
  get rework(): Step | null {
    const step = this.memory.ints[this.at + U_REWORK];
    return step === NOWHERE ? null : this.units.stepAt(step);
  }
  set rework(step: Step | null) {
    this.memory.ints[this.at + U_REWORK] = step?.at ?? NOWHERE;
  }

  /** Location for work in process; -1 outside. */
  get location(): number {
    return this.memory.ints[this.at + U_LOCATION];
  }
  set location(location: number) {
    this.memory.ints[this.at + U_LOCATION] = location;
  }

  /** It has not come in: it waits for room at the gate, not in a truck or in the arrival bank of a lane. */
  get isOutside(): boolean {
    return this.location < 0 && this.truck === null && this.arrivedBy === null;
  }

  /** A shadow takes on what matters of the unit to one of several steps side by side. */
  follow(unit: Unit, step: Step, place: Place): void {
    const { ints } = this.memory,
      { at } = this;
    ints[at + U_NUMBER] = unit.number;
    ints[at + U_STEP] = step.at;
    ints[at + U_PLACE] = place.at;
    ints[at + U_FIRST] = 0;
    ints[at + U_REWORK] = ints[unit.at + U_REWORK];
    this.options.set(unit.options);
    this.againTo = unit.againTo;
    this.real = unit;
  }

  reset(number: number, step: Step): void {
    const { ints } = this.memory,
      { at } = this;
    ints[at + U_NUMBER] = number;
    ints[at + U_STEP] = step.at;
    ints[at + U_PLACE] = NOWHERE;
    ints[at + U_FIRST] = 0;
    ints[at + U_REWORK] = NOWHERE;
    ints[at + U_LOCATION] = -1;
    this.alive = true;
    this.truck = null;
    this.arrivedBy = null;
    this.parent = null;
    this.dueAt = Infinity;
    this.ownOff = this.companionBits = this.unstaffed = 0;
    this.notClean = 0;
    this.found = 0;
    this.againTo = this.doneAt = -1;
    this.heldAt = null;
    this.heldSince = NaN;
    this.brought = null;
    if (this.noted > 0) clear(this.notes);
    this.noted = 0;
    clear(this.slots);
    clear(this.loops);
    clear(this.seen);
    for (let i = 0; i < this.claimedAt.length; i++) this.claimedAt[i] = NOT_CLAIMED;
  }
}

/** Short columns: a loop is quicker than the built-in fill. */
function clear(column: Uint8Array | Uint16Array | Uint32Array): void {
  for (let i = 0; i < column.length; i++) column[i] = 0;
}
