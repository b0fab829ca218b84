import { CLEAN, closeItem, OPEN, openItem } from '../floor/defects.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';

import { PartDefects } from './part-defects.js';

/** Rule 8 at a join: what happens to items when sub-assemblies join a unit or leave it. */

/**
 * Parts of a stock are claimed at a step. Those that the unit had from this step before are replaced, and
 * their items go with them.
 */
export function takeParts(run: Run, unit: Unit, step: Step, stock: PartDefects, amount: number): void {
  for (const slot of stock.slots) {
    if (unit.slots[slot] === CLEAN || unit.slotTarget[slot] !== step.id) continue;
    closeItem(unit, slot);
    run.tally.quality.replaced[slot]++;
  }
  for (let n = 0; n < amount; n++) stock.take(unit, step.id, run.tally.quality);
}

/** Own parts have come to the end of their feeder. */
export function bringBack(run: Run, part: Unit, parent: Unit): void {
  const { route } = part.step;
  if (part.notClean === 0) return;
  parent.brought ??= run.shop.routes.map(() => null);
  (parent.brought[route.id] ??= new PartDefects(route.carriedSlots, 1)).put(part);
}

/** The unit takes up its own parts of a step, as far as they have something to bring. */
export function takeOwnParts(run: Run, unit: Unit, step: Step): void {
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
