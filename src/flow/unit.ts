import type { Place } from './station.js';
import type { Step } from './step.js';
import type { Truck } from './lane.js';

/** State of a defect slot on a unit: none; present and not found; found and waiting for the step that mends it. */
export const CLEAN = 0, OPEN = 1, FOUND = 2;

/** A unit, or a sub-assembly: that is a unit whose route is a feeder. Objects are used again when a unit has left. */
export class Unit {
  alive = false;
  /** Build number from 1; of a sub-assembly its running number, of own parts that of their unit. */
  number = 0;
  step: Step;
  /** Where it stands: a place, a truck, or neither: in a buffer, or outside. */
  place: Place | null = null;
  truck: Truck | null = null;
  /** Behind it in the one list it is in, and when it joined. */
  next: Unit | null = null;
  queuedAt = Number.NaN;
  /** Entry into the first buffer or place. */
  born = Number.NaN;
  /** 1: goes first in buffers: from a send-back until it stands at the step it was sent to. */
  first = 0;
  /** The inspection that sent it back and that it has not reached again. */
  rework: Step | null = null;
  /** Location for work in process; -1 outside. */
  location = -1;
  parent: Unit | null = null;
  /** Own parts that are back, a bit a feeder. */
  ownBack = 0;
  /** Slots not clean, and those of them found. */
  notClean = 0;
  found = 0;
  readonly options: Uint8Array;
  readonly slots: Uint8Array;
  /** Id of the step that mends a found slot. */
  readonly slotTarget: Int32Array;
  /** Times sent back by each `then` row. */
  readonly loops: Uint16Array;
  /** 1: has been at the inspection before. */
  readonly seen: Uint8Array;

  constructor(step: Step, options: number, slots: number, thens: number, inspections: number) {
    this.step = step;
    this.options = new Uint8Array(options);
    this.slots = new Uint8Array(slots);
    this.slotTarget = new Int32Array(slots);
    this.loops = new Uint16Array(thens);
    this.seen = new Uint8Array(inspections);
  }

  reset(number: number, step: Step): void {
    this.alive = true;
    this.number = number;
    this.step = step;
    this.place = null;
    this.truck = null;
    this.next = null;
    this.first = 0;
    this.rework = null;
    this.location = -1;
    this.parent = null;
    this.ownBack = 0;
    this.notClean = 0;
    this.found = 0;
    this.slots.fill(CLEAN);
    this.loops.fill(0);
    this.seen.fill(0);
  }
}

/** All units of a run. Memory follows the number alive at once. */
export class Units {
  /** Every unit object, alive or not. */
  readonly all: Unit[] = [];
  alive = 0;
  private readonly unused: Unit[] = [];

  constructor(private readonly options: number, private readonly slots: number, private readonly thens: number, private readonly inspections: number) {}

  create(number: number, step: Step): Unit {
    let unit = this.unused.pop();
    if (unit === undefined) this.all.push(unit = new Unit(step, this.options, this.slots, this.thens, this.inspections));
    unit.reset(number, step);
    this.alive++;
    return unit;
  }

  /** Takes a unit out: shipped, scrapped, or joined to another. */
  remove(unit: Unit): void {
    unit.alive = false;
    this.alive--;
    this.unused.push(unit);
  }
}
