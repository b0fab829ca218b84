import type { Model } from '../model/model.js';
import { type Memory, NOWHERE, PLACE_SHIFT, STEP_SHIFT, UNIT_SHIFT } from './memory.js';
import type { Place } from './place.js';
import type { Step } from './step.js';
import { Unit } from './unit.js';

/** All units of a run. Memory follows the number alive at once. */
export class Units {
  /** Every unit object, alive or not. */
  readonly all: Unit[] = [];
  alive = 0;
  private readonly unused: Unit[] = [];
  private steps: readonly Step[] = [];
  private places: readonly Place[] = [];
  private inspections = 0;
  /** Addresses, as in `memory`. */
  private readonly firstUnit: number;
  private readonly firstPlace: number;

  constructor(
    readonly memory: Memory,
    private readonly model: Model,
  ) {
    this.firstUnit = memory.units;
    this.firstPlace = memory.places;
  }

  /** Tells it of the shop floor, which is built after it. */
  furnish(steps: readonly Step[], places: readonly Place[], inspections: number): void {
    this.steps = steps;
    this.places = places;
    this.inspections = inspections;
  }

  create(number: number, step: Step): Unit {
    const unit = this.unused.pop() ?? this.make();
    unit.reset(number, step);
    this.alive++;
    return unit;
  }

  /**
   * A new one. As it is not alive nobody counts it: it may stand for a unit at one of several steps side by
   * side.
   */
  make(): Unit {
    this.memory.reserveUnit(this.all.length);
    const unit = new Unit(this.all.length, this, this.model, this.inspections);
    this.all.push(unit);
    return unit;
  }

  /** Takes a unit out: shipped, scrapped, or joined to another. */
  remove(unit: Unit): void {
    unit.alive = false;
    this.alive--;
    this.unused.push(unit);
  }

  at(address: number): Unit {
    return this.all[(address - this.firstUnit) >> UNIT_SHIFT];
  }

  stepAt(address: number): Step {
    return this.steps[address >> STEP_SHIFT];
  }

  placeAt(address: number): Place | null {
    return address === NOWHERE ? null : this.places[(address - this.firstPlace) >> PLACE_SHIFT];
  }
}
