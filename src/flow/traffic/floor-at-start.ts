import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { meetsConditions } from '../work/options.js';
import { beginPart } from './feeders.js';
import { goIn } from './move.js';
import { createUnit } from './release.js';

/**
 * Rule 15, the floor as it is: at time 0 the units of the opening stand at the step that they are about to
 * begin, in a place or a space of its buffer, in the order of the model (the farthest along the route first).
 * Own parts that are off a unit there begin their feeder.
 */
export function placeUnitsAtStart(run: Run): void {
  const {
      tally,
      shop: { steps },
    } = run,
    units: Unit[] = [];
  for (const line of run.shop.pulseLines) line.isMoving = true;
  for (const id of run.model.programme.orders.openingStep) {
    const unit = createUnit(run),
      step = steps[id];
    unit.ownOff = partsOff(run, unit, step);
    units.push(unit);
    if (!goIn(run, unit, step))
      throw new RangeError(
        `opening: expected room for each unit, got none for unit ${unit.number} at step ${step.name}`,
      );
  }
  for (const line of run.shop.pulseLines) line.isMoving = false;
  // They came before the run: the series tells what is released in it.
  if (run.bucket >= 0 && run.bucket < tally.enteredIn.length) tally.enteredIn[run.bucket] -= units.length;
  // After all units have their room, so that no part stands in it.
  for (const unit of units)
    for (const route of run.shop.routes) if ((unit.ownOff & route.ownBit) !== 0) beginPart(run, route, unit);
}

/**
 * Own parts taken off at the steps before `step` that the unit has passed, and not put back at one of them.
 */
function partsOff(run: Run, unit: Unit, step: Step): number {
  const { offStart, offRoute } = run.model.steps;
  let off = 0;
  for (let passed = step.route.first!; passed !== step; passed = passed.next!) {
    if (!meetsConditions(run, unit, passed)) continue;
    off &= ~passed.ownParts;
    for (let o = offStart[passed.id]; o < offStart[passed.id + 1]; o++)
      off |= run.shop.routes[offRoute[o]].ownBit;
  }
  return off;
}
