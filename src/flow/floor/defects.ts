import { CLEAN, FOUND, NOTED, OPEN } from '../model/quality.js';
import type { Unit } from './unit.js';

/**
 * What may happen to an item: a flaw of one slot on a unit or sub-assembly. All changes of slots are made
 * here, so that the counts of the unit hold.
 */

/** A new item; false if there is one already: it stays one item. */
export function openItem(unit: Unit, slot: number): boolean {
  if (unit.slots[slot] !== CLEAN) return false;
  unit.slots[slot] = OPEN;
  unit.notClean++;
  return true;
}

/** Mended, or gone with the part it was in. */
export function closeItem(unit: Unit, slot: number): void {
  if (unit.slots[slot] === FOUND) unit.found--;
  unit.slots[slot] = CLEAN;
  unit.notClean--;
  strike(unit, slot);
}

/** Found, and waiting for the step that mends it. */
export function sendItem(unit: Unit, slot: number, target: number): void {
  unit.slots[slot] = FOUND;
  unit.slotTarget[slot] = target;
  unit.found++;
  strike(unit, slot);
}

/**
 * Found and left open: on the list of the unit until a hold mends it. `state` is NOTED, or PASSED where later
 * inspections may find it again.
 * @param find row of the find
 */
export function noteItem(unit: Unit, slot: number, state: number, find: number): void {
  // A failed test had no item until now.
  if (unit.slots[slot] === CLEAN) unit.notClean++;
  unit.slots[slot] = state;
  if (unit.notes[slot] === 0) unit.noted++;
  unit.notes[slot] = find + 1;
}

/**
 * An item comes with a part at a step, open; of two alike one stays, rather the one that is noted. False if
 * there was one.
 */
export function bringItem(unit: Unit, slot: number, state: number, note: number, step: number): boolean {
  const isNew = openItem(unit, slot);
  if (isNew) unit.slotTarget[slot] = step;
  if (note > 0 && unit.notes[slot] === 0 && unit.slots[slot] !== FOUND) noteItem(unit, slot, state, note - 1);
  return isNew;
}

/** Off the list. */
function strike(unit: Unit, slot: number): void {
  if (unit.notes[slot] === 0) return;
  unit.notes[slot] = 0;
  unit.noted--;
}

/**
 * Whether an inspection may find it: it is there, and neither on its way to be mended nor left for the hold.
 */
export const isSought = (state: number): boolean => state !== CLEAN && state !== FOUND && state !== NOTED;
