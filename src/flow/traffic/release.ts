import { holdFromStart } from '../claims/carriers.js';
import { RELEASE } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import { RELEASE_SATURATED, RELEASE_TIMES } from '../model/programme.js';
import { HOLD_NOTED } from '../model/quality.js';
import { REWORK_ONLY } from '../model/steps.js';
import type { Run } from '../run.js';
import { meetsConditions } from '../tasks/options.js';
import { beginPart } from './feeders.js';
import { goIn } from './move.js';
import { stepFrom } from './routes.js';

/**
 * Rule 15: units are released at given times, at drawn intervals, or whenever the line takes one. A unit that
 * finds no room waits outside.
 */

export function beginRelease(run: Run): void {
  if (run.model.programme.release === RELEASE_SATURATED) run.sourceEntered = run.pending = true;
  else scheduleNext(run);
}

/** A release is due. */
export function release(run: Run): void {
  sendIn(run, createUnit(run));
  scheduleNext(run);
}

/** The saturated source has one unit outside at any time. */
export function refillSource(run: Run): void {
  run.sourceEntered = false;
  const { programme } = run.model,
    { begun } = run.shop.routes[0];
  // One may stand outside already, if it was an order built again that has entered.
  if (
    programme.release === RELEASE_SATURATED &&
    begun < programme.quantity &&
    begun === run.gone + run.locations.total
  )
    sendIn(run, createUnit(run));
}

function scheduleNext(run: Run): void {
  const { programme } = run.model,
    { begun } = run.shop.routes[0];
  if (programme.release === RELEASE_TIMES) {
    if (begun < programme.times.length) run.queue.push(programme.times[begun], RELEASE, 0);
  } else if (begun < programme.quantity)
    run.queue.push(run.now + run.sampler.time(programme.intervalDraw), RELEASE, 0);
}

/** The next unit in build order, still outside; chance decides on what its order leaves open. */
export function createUnit(run: Run): Unit {
  const { options } = run.model,
    route = run.shop.routes[0],
    number = ++route.begun,
    unit = run.units.create(number, route.first!);
  for (let o = 0; o < options.length; o++) {
    const { cumulative } = options[o],
      u = run.sampler.next(o);
    let value = 0;
    while (value < cumulative.length - 1 && u >= cumulative[value]) value++;
    unit.options[o] = value;
  }
  giveOrder(run, unit);
  if (options.length > 0 && number * options.length <= run.optionsOf.length)
    run.optionsOf.set(unit.options, (number - 1) * options.length);
  return unit;
}

function sendIn(run: Run, unit: Unit): void {
  const step = stepFrom(run, unit, unit.step);
  if (step === null)
    throw new RangeError(`route: expected a step for every unit, got none for unit ${unit.number}`);
  goIn(run, unit, step);
}

/**
 * Rule 15, what is known of single units: options and due dates of their orders, and the order of a scrapped
 * unit built again.
 */

/**
 * A unit is released now: what its order says goes before what was drawn, so that the draws of all others
 * stay as they are.
 */
export function giveOrder(run: Run, unit: Unit): void {
  const {
      options,
      programme: { orders },
    } = run.model,
    index = unit.number - 1,
    isKnown = index < orders.count;
  if (isKnown) {
    for (let o = 0; o < options.length; o++) {
      const value = orders.values[index * options.length + o];
      if (value >= 0) unit.options[o] = value;
    }
  }
  unit.dueAt = isKnown && orders.dueAt[index] < Infinity ? orders.dueAt[index] : run.now + orders.dueAfter;
  if (index < run.dueAt.length) run.dueAt[index] = unit.dueAt;
}

/**
 * A unit in the stead of one that is scrapped: same build number, options and due date, from the start of the
 * route.
 */
export function buildAgain(run: Run, scrapped: Unit): void {
  const { first } = scrapped.step.route,
    unit = run.units.create(scrapped.number, first!);
  unit.options.set(scrapped.options);
  unit.dueAt = scrapped.dueAt;
  goIn(run, unit, stepFrom(run, unit, first)!);
}

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
  // All hold what they have before the first of them claims anything.
  for (const id of run.model.programme.orders.openingStep) {
    const unit = createUnit(run);
    goneBy(run, unit, steps[id]);
    units.push(unit);
  }
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
 * The unit comes to `step`, and so has passed those before it that every unit like it does: own parts taken
 * off there and not put back are off it, and it holds the carriers and teams that stay with it.
 */
function goneBy(run: Run, unit: Unit, step: Step): void {
  const { offStart, offRoute } = run.model.steps;
  for (let passed = step.route.first!; passed !== step; passed = passed.next!) {
    if (!meetsConditions(run, unit, passed)) continue;
    if (passed.asked.companions.length > 0 && isSure(run, passed)) holdFromStart(unit, passed, step);
    unit.ownOff &= ~passed.asked.ownParts;
    for (let o = offStart[passed.id]; o < offStart[passed.id + 1]; o++)
      unit.ownOff |= run.shop.routes[offRoute[o]].ownBit;
  }
  unit.step = step;
}

/** No sample, no hold for open items, not in rework alone: a unit that meets its conditions does it. */
function isSure({ model: { steps, quality } }: Run, { id }: Step): boolean {
  return steps.rework[id] !== REWORK_ONLY && steps.sampleN[id] === 0 && quality.hold[id] !== HOLD_NOTED;
}
