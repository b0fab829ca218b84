import type { QualityTally } from '../accounts/tally.js';
import { bringItem, CLEAN } from '../floor/defects.js';
import type { Route } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';

/**
 * Items that nobody mended in a feeder and that go on with the sub-assembly. Each one in a stock has its own,
 * first in first out; own parts keep theirs until their unit takes them up.
 */
export class PartDefects {
  private readonly states: Uint8Array;
  /** Find rows + 1, as on a unit. */
  private readonly notes: Uint16Array;
  private first = 0;
  length = 0;

  /** @param most sub-assemblies there at once */
  constructor(
    readonly slots: Int32Array,
    private readonly most: number,
  ) {
    this.states = new Uint8Array(most * slots.length);
    this.notes = new Uint16Array(most * slots.length);
  }

  /** Sub-assemblies without an item: the stock at the start. */
  fill(count: number): void {
    this.length += count;
  }

  put(part: Unit): void {
    const { slots } = this,
      at = ((this.first + this.length++) % this.most) * slots.length;
    for (let s = 0; s < slots.length; s++) {
      this.states[at + s] = part.slots[slots[s]];
      this.notes[at + s] = part.notes[slots[s]];
    }
  }

  /** The first of them joins the unit at a step. */
  take(unit: Unit, step: number, { merged }: QualityTally): void {
    const { slots } = this,
      at = this.first * slots.length;
    this.first = (this.first + 1) % this.most;
    this.length--;
    for (let s = 0; s < slots.length; s++) {
      const state = this.states[at + s];
      if (state === CLEAN) continue;
      this.states[at + s] = CLEAN;
      if (!bringItem(unit, slots[s], state, this.notes[at + s], step)) merged[slots[s]]++;
    }
  }
}

/** Where sub-assemblies may bring items along, a stock knows those of each one in it. */
export function furnishPartDefects(
  { quality: { carriedStart, carriedSlot } }: Model,
  routes: readonly Route[],
): void {
  for (const route of routes) {
    const { id, stock, target } = route,
      slots = carriedSlot.subarray(carriedStart[id], carriedStart[id + 1]);
    route.carriedSlots = slots;
    if (stock === null || slots.length === 0) continue;
    stock.partDefects = new PartDefects(slots, Math.max(target, stock.amount));
    stock.partDefects.fill(stock.amount);
  }
}
