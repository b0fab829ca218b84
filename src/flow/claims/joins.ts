import type { QualityTally } from '../accounts/tally.js';
import { bringItem, closeItem, openItem } from '../floor/defects.js';
import type { Route } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import { CLEAN, OPEN } from '../model/quality.js';
import type { Run } from '../run.js';
import type { Asked } from './asked.js';

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

/** Rule 8 at a join: what happens to items when sub-assemblies join a unit or leave it. */

/**
 * Parts of a stock are claimed at a step. Those that the unit had from this step before are replaced, and
 * their items go with them.
 */
export function takeParts(run: Run, unit: Unit, step: number, stock: PartDefects, amount: number): void {
  for (const slot of stock.slots) {
    if (unit.slots[slot] === CLEAN || unit.slotTarget[slot] !== step) continue;
    closeItem(unit, slot);
    run.tally.quality.replaced[slot]++;
  }
  for (let n = 0; n < amount; n++) stock.take(unit, step, run.tally.quality);
}

/** Own parts have come to the end of their feeder. */
export function bringBack(run: Run, part: Unit, parent: Unit): void {
  const { route } = part.step;
  if (part.notClean === 0) return;
  parent.brought ??= run.shop.routes.map(() => null);
  (parent.brought[route.id] ??= new PartDefects(route.carriedSlots, 1)).put(part);
}

/** The unit takes up its own parts of a step, as far as they have something to bring. */
export function takeOwnParts(run: Run, unit: Unit, step: Asked): void {
  for (const { ownBit, id } of run.shop.routes) {
    const brought = (step.ownParts & ownBit) !== 0 ? unit.brought![id] : null;
    if (brought !== null && brought.length > 0) brought.take(unit, step.id, run.tally.quality);
  }
}

/** Own parts come off once more, and what nobody has found on them goes with them. */
export function takeAlong(run: Run, parent: Unit, part: Unit): void {
  const { route } = part.step,
    brought = parent.brought?.[route.id] ?? null;
  if (brought !== null && brought.length > 0) brought.take(part, part.step.id, run.tally.quality);
  if (parent.notClean === 0) return;
  for (const slot of route.carriedSlots) {
    if (parent.slots[slot] !== OPEN) continue;
    closeItem(parent, slot);
    openItem(part, slot);
  }
}

/** An own part of the unit is back: if the unit waits for it, its request is looked at again. */
export function ownPartBack(run: Run, unit: Unit): void {
  const { pool } = unit.step.asked;
  if (pool !== null && pool.waiting > 0) run.listMatch(pool);
}
