import type { Plan } from './plan.js';

/** State of a defect slot on a unit: none; present and not found; found and waiting for the step that mends it. */
export const CLEAN = 0, OPEN = 1, FOUND = 2;

/**
 * Units and sub-assemblies alive, as ids into growing columns with a free list: memory follows the number alive at once.
 * A sub-assembly is held as a unit whose route is a feeder.
 */
export class Units {
  capacity: number;
  alive = 0;
  private freeHead = -1;
  private used = 0;

  /** Build number from 1; for a sub-assembly of a feeder its running number, for own parts the unit's. */
  number: Int32Array;
  step: Int32Array;
  /** Place held; -1 in a queue, a truck or outside. */
  place: Int32Array;
  truck: Int32Array;
  /** Entry into the first buffer or place, minutes. */
  born: Float64Array;
  /** Link in the one queue or list the unit is in. */
  next: Int32Array;
  /** When it joined that queue or list. */
  queuedAt: Float64Array;
  /** 1: goes first in queues: from a send-back until it stands at the step it was sent to. */
  first: Uint8Array;
  /** Inspection step + 1 that sent it back and has not been reached again; 0 when going forward. */
  rework: Int32Array;
  /** Location for work in process; -1 outside. */
  location: Int32Array;
  parent: Int32Array;
  /** Own parts that are back, a bit a feeder route. */
  ownBack: Int32Array;
  /** Slots not clean, and those of them found. */
  notClean: Int32Array;
  found: Int32Array;
  options: Uint8Array;
  slots: Uint8Array;
  /** Step that mends a found slot. */
  slotTarget: Int32Array;
  /** Times sent back by each `then` row. */
  loops: Uint16Array;
  /** 1: has been at the inspection before. */
  seen: Uint8Array;

  constructor(optionCount: number, private readonly slotCount: number, private readonly thenCount: number, private readonly inspectionCount: number, capacity = 64) {
    this.capacity = capacity;
    this.number = new Int32Array(capacity);
    this.step = new Int32Array(capacity);
    this.place = new Int32Array(capacity);
    this.truck = new Int32Array(capacity);
    this.born = new Float64Array(capacity);
    this.next = new Int32Array(capacity);
    this.queuedAt = new Float64Array(capacity);
    this.first = new Uint8Array(capacity);
    this.rework = new Int32Array(capacity);
    this.location = new Int32Array(capacity);
    this.parent = new Int32Array(capacity);
    this.ownBack = new Int32Array(capacity);
    this.notClean = new Int32Array(capacity);
    this.found = new Int32Array(capacity);
    this.options = new Uint8Array(capacity * optionCount);
    this.slots = new Uint8Array(capacity * slotCount);
    this.slotTarget = new Int32Array(capacity * slotCount);
    this.loops = new Uint16Array(capacity * thenCount);
    this.seen = new Uint8Array(capacity * inspectionCount);
  }

  static for(plan: Plan): Units {
    const { options, slots, thens } = plan.model;
    return new Units(options.length, slots.count, thens.count, plan.inspectionSteps.length);
  }

  /** Highest id ever used + 1, for a walk over all; an id not alive has step -1. */
  get end(): number {
    return this.used;
  }

  create(number: number, step: number): number {
    let unit = this.freeHead;
    if (unit >= 0) this.freeHead = this.next[unit];
    else {
      if (this.used === this.capacity) this.grow();
      unit = this.used++;
    }
    this.alive++;
    this.number[unit] = number;
    this.step[unit] = step;
    this.place[unit] = -1;
    this.truck[unit] = -1;
    this.next[unit] = -1;
    this.first[unit] = 0;
    this.rework[unit] = 0;
    this.location[unit] = -1;
    this.parent[unit] = -1;
    this.ownBack[unit] = 0;
    this.notClean[unit] = 0;
    this.found[unit] = 0;
    this.slots.fill(CLEAN, unit * this.slotCount, (unit + 1) * this.slotCount);
    this.loops.fill(0, unit * this.thenCount, (unit + 1) * this.thenCount);
    this.seen.fill(0, unit * this.inspectionCount, (unit + 1) * this.inspectionCount);
    return unit;
  }

  /** Takes a unit out: shipped, scrapped, or joined to another. */
  remove(unit: number): void {
    this.alive--;
    this.step[unit] = -1;
    this.next[unit] = this.freeHead;
    this.freeHead = unit;
  }

  private grow(): void {
    this.capacity *= 2;
    for (const key of Object.keys(this) as (keyof this)[]) {
      const column = this[key];
      if (!ArrayBuffer.isView(column)) continue;
      const old = column as unknown as Int32Array;
      const larger = new (old.constructor as Int32ArrayConstructor)(old.length * 2);
      larger.set(old);
      this[key] = larger as unknown as this[keyof this];
    }
  }
}
