import { enterState } from '../floor/ledger.js';
import type { Place } from '../floor/place.js';
import { IN_WORK, TASK, WORKING } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { workMinutes } from './options.js';

/**
 * The commonest claim in one piece: some people of one crew who are free, and whom nobody else waits for. It
 * does what `request`, `start` and `enterPhase` would do, so the bits are the same.
 */

/** A step that claims one crew begins. False: nothing was done, the long way is to be gone. */
export function beginWithCrew(run: Run, place: Place, unit: Unit, step: Step): boolean {
  const { needs, companionBits } = step.asked,
    { resource: crew, amount } = needs[0];
  if (
    crew.free < amount ||
    crew.pool.waiting > 0 ||
    (companionBits & ~unit.companionBits) !== 0 ||
    unit.brought !== null
  )
    return false;
  const { memory } = run,
    { now } = memory;
  place.askedAt = now;
  place.wantedSince = now;
  place.teamOrder = Infinity;
  place.wanted = 0;
  crew.change(-amount, now);
  place.holdsCrew = true;
  const minutes = (place.minutes = workMinutes(run, place, unit, step));
  if (unit.againTo >= step.id) crew.rework += amount * minutes;
  place.pass = 0;
  place.phase = IN_WORK;
  enterState(memory, place.at, WORKING, step.workCalendar);
  run.queue.push(memory.after(step.workCalendar, minutes), TASK, place.id);
  return true;
}
