import { type Memory, PLACE_SHIFT, STEP_SHIFT, UNIT_SHIFT } from './memory.js';
import type { Place } from './place.js';
import type { Step } from './step.js';
import { Unit, type UnitSize } from './unit.js';

/** All units of a run. Memory follows the number alive at once. */
export class Units {
  /** Every unit object, alive or not. */
  readonly all: Unit[] = [];
  alive = 0;
  private readonly unused: Unit[] = [];
  private steps: readonly Step[] = [];
  private places: readonly Place[] = [];
  private size: UnitSize = { options: 0, slots: 0, thens: 0, inspections: 0 };

  constructor(readonly memory: Memory) {}

  /** Tells it of the shop floor, which is built after it. */
  furnish(steps: readonly Step[], places: readonly Place[], size: UnitSize): void {
    this.steps = steps;
    this.places = places;
    this.size = size;
  }

  create(number: number, step: Step): Unit {
    let unit = this.unused.pop();
    if (unit === undefined) {
      this.memory.reserveUnit(this.all.length);
      this.all.push((unit = new Unit(this.all.length, this, this.size)));
    }
    unit.reset(number, step);
    this.alive++;
    return unit;
  }

  /** Stands for a unit at one of several steps side by side; never alive, so that nobody counts it. */
  shadow(): Unit {
    this.memory.reserveUnit(this.all.length);
    const shadow = new Unit(this.all.length, this, this.size);
    this.all.push(shadow);
    return shadow;
  }

  /** Takes a unit out: shipped, scrapped, or joined to another. */
  remove(unit: Unit): void {
    unit.alive = false;
    this.alive--;
    this.unused.push(unit);
  }

  at(address: number): Unit {
    return this.all[(address - this.memory.units) >> UNIT_SHIFT];
  }

  stepAt(address: number): Step {
    return this.steps[address >> STEP_SHIFT];
  }

  placeAt(address: number): Place {
    return this.places[(address - this.memory.places) >> PLACE_SHIFT];
  }
}
