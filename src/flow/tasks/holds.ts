import { closeItem } from '../floor/defects.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import { CARRY, CLEAN, HOLD_ALL } from '../model/quality.js';
import type { Run } from '../run.js';
import { repairTime } from './options.js';

/**
 * Rule 10: a unit with noted items takes a place at the hold, where they are mended one after another; others
 * pass it over, unless the step has something to do for all.
 */

/** The unit has come to the hold; true if it stops there. */
export function comesToHold(run: Run, unit: Unit, step: Step): boolean {
  run.tally.quality.cameToHold[step.hold]++;
  if (unit.noted > 0) {
    hold(run, unit, step);
    return true;
  }
  return run.model.quality.hold[step.id] === HOLD_ALL;
}

/** The work on all that is noted, minutes; the items are closed. */
export function mendNoted(run: Run, unit: Unit, step: Step): number {
  if (unit.noted === 0) return 0;
  const {
    tally: { quality },
    model: {
      thens,
      steps: { findThen },
      quality: { mendTime },
    },
  } = run;
  // Sent straight to this step, it did not come along the route.
  if (Number.isNaN(unit.heldSince)) {
    quality.cameToHold[step.hold]++;
    hold(run, unit, step);
  }
  let sum = 0;
  for (let slot = 0; slot < unit.notes.length; slot++) {
    if (unit.notes[slot] === 0) continue;
    const find = unit.notes[slot] - 1,
      then = findThen[find],
      time = thens.kind[then] === CARRY ? thens.repairTime[then] : mendTime[step.id];
    const minutes = repairTime(run, unit, time);
    quality.repairMinutes[find] += minutes;
    quality.mended[step.hold]++;
    sum += minutes;
    closeItem(unit, slot);
  }
  return sum;
}

/** The hold step is over: the unit may go on. */
export function endHold(run: Run, unit: Unit, step: Step): void {
  if (Number.isNaN(unit.heldSince)) return;
  const { released, heldMinutes } = run.tally.quality;
  released[step.hold].add(run.now - unit.heldSince);
  heldMinutes[step.hold] += run.now - Math.max(unit.heldSince, run.observedFrom);
  unit.heldSince = NaN;
  unit.heldAt = null;
}

/** Noted items on a unit that is shipped are counted apart from those that nobody found. */
export function countShippedOpen(run: Run, unit: Unit): void {
  const { quality } = run.tally;
  for (let slot = 0; slot < unit.slots.length; slot++) {
    if (unit.slots[slot] !== CLEAN)
      (unit.notes[slot] === 0 ? quality.shippedUnfound : quality.shippedNoted)[slot]++;
  }
}

function hold(run: Run, unit: Unit, step: Step): void {
  unit.heldSince = run.now;
  unit.heldAt = step;
  run.tally.quality.held[step.hold]++;
}
