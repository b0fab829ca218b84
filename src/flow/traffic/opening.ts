import { holdFromStart } from '../claims/carriers.js';
import { noteItem, openItem, sendItem } from '../floor/defects.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import { FOUND, HOLD_NOTED, NOTED, OPEN, PASSED, SEND_BACK } from '../model/quality.js';
import { REWORK_ONLY } from '../model/steps.js';
import type { Run } from '../run.js';
import { meetsConditions } from '../tasks/options.js';
import { beginPart } from './feeders.js';
import { goIn } from './move.js';
import { createUnit } from './release.js';

/**
 * Rule 15, the floor as it is: at time 0 the units of the opening stand at the step that they are about to
 * begin, in a place or a space of its buffer, in the order of the model (the farthest along the route first),
 * with the items that are open on them. Own parts that are off a unit there begin their feeder.
 */
export function placeUnitsAtStart(run: Run): void {
  const {
      tally,
      shop: { steps },
      model: {
        programme: { orders },
      },
    } = run,
    units: Unit[] = [];
  // All hold what they have before the first of them claims anything.
  orders.openingStep.forEach((id, u) => {
    const unit = createUnit(run),
      sender = orders.openingSender[u] < 0 ? null : steps[orders.openingSender[u]];
    if (sender === null) goneBy(run, unit, unit.step, steps[id]);
    else sentBack(run, unit, sender, steps[id]);
    unit.step = steps[id];
    unit.done = orders.openingDone[u];
    unit.doneAt = id;
    for (let item = orders.items.start[u]; item < orders.items.start[u + 1]; item++)
      giveItem(run, unit, item);
    units.push(unit);
  });
  run.isOpening = true;
  for (const line of run.shop.pulseLines) line.isMoving = true;
  for (const unit of units) {
    const { step } = unit;
    if (!goIn(run, unit, step))
      throw new RangeError(
        `opening: expected room for each unit, got none for unit ${unit.number} at step ${step.name}`,
      );
  }
  for (const line of run.shop.pulseLines) line.isMoving = false;
  run.isOpening = false;
  // They came before the run: the series tells what is released in it.
  if (run.bucket >= 0 && run.bucket < tally.enteredIn.length) tally.enteredIn[run.bucket] -= units.length;
  // After all units have their room, so that no part stands in it.
  for (const unit of units)
    for (const route of run.shop.routes) if ((unit.ownOff & route.ownBit) !== 0) beginPart(run, route, unit);
}

/**
 * The unit comes to `step`, and so has passed those from `first` on that every unit like it does: own parts
 * taken off there and not put back are off it, and it holds the carriers and teams that stay with it.
 */
function goneBy(run: Run, unit: Unit, first: Step, step: Step): void {
  const { offStart, offRoute } = run.model.steps;
  for (let passed = first; passed !== step; passed = passed.next!) {
    if (!meetsConditions(run, unit, passed)) continue;
    if (passed.asked.companions.length > 0 && isSure(run, passed)) holdFromStart(unit, passed, step);
    unit.ownOff &= ~passed.asked.ownParts;
    for (let o = offStart[passed.id]; o < offStart[passed.id + 1]; o++)
      unit.ownOff |= run.shop.routes[offRoute[o]].ownBit;
  }
}

/** No sample, no hold for open items, not in rework alone: a unit that meets its conditions does it. */
function isSure({ model: { steps, quality } }: Run, { id }: Step): boolean {
  return steps.rework[id] !== REWORK_ONLY && steps.sampleN[id] === 0 && quality.hold[id] !== HOLD_NOTED;
}

/**
 * The unit has been as far as `sender`, which sent it back, and has come to `step` on its way there again:
 * from the last step at or before it to which units are sent from there.
 */
function sentBack(run: Run, unit: Unit, sender: Step, step: Step): void {
  const {
      model: { steps, thens },
      shop,
      tally,
    } = run,
    targets: number[] = [];
  for (let find = steps.findStart[sender.id]; find < steps.findStart[sender.id + 1]; find++) {
    const then = steps.findThen[find];
    if (thens.kind[then] === SEND_BACK && thens.target[then] <= step.id) targets.push(thens.target[then]);
  }
  goneBy(run, unit, unit.step, sender);
  if (targets.length > 0) goneBy(run, unit, shop.steps[Math.max(...targets)], step);
  unit.rework = sender === step ? null : sender;
  unit.first = targets.includes(step.id);
  unit.againTo = sender.id;
  unit.seen[sender.inspection] = 2;
  tally.doneAgain[step.id]++;
  tally.doneAgain[sender.id + 1]--;
}

/** An item is open on the unit, perhaps by chance; one that nobody has found counts as made in the run. */
function giveItem(run: Run, unit: Unit, item: number): void {
  const {
      programme: {
        orders: { items },
      },
      steps: { findThen },
      quality: { findNote },
      thens,
    } = run.model,
    slot = items.slot[item],
    find = items.find[item],
    state = items.state[item];
  if (items.chance[item] < 1 && run.sampler.next(items.draw) >= items.chance[item]) return;
  if (state === NOTED || state === PASSED) {
    noteItem(unit, slot < 0 ? findNote[find] : slot, state, find);
    if (state === PASSED || thens.kind[findThen[find]] === SEND_BACK)
      unit.loops[findThen[find]] = thens.limit[findThen[find]];
    return;
  }
  if (state === FOUND) unit.loops[findThen[find]] = 1;
  if (slot < 0 || !openItem(unit, slot)) return;
  if (items.cameAt[item] >= 0) unit.slotTarget[slot] = items.cameAt[item];
  if (state === FOUND) sendItem(unit, slot, thens.target[findThen[find]]);
  else {
    unit.slots[slot] = state;
    if (state === OPEN) run.tally.quality.made[slot]++;
  }
}
