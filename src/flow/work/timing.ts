import type { Place } from '../floor/place.js';
import { OFF_SHIFT, TASK, UNATTENDED } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import { AT_LOT, CAN_FAIL } from '../floor/step-flags.js';
import type { Run } from '../run.js';
import { operate } from './operating-time.js';

/** Phases of a task that take time: the state of the place while they last, and the event at their end. */

/** Work of `place.minutes` by people, in the calendar of the step. */
export function attended(run: Run, place: Place, phase: number, state: number, step: Step): false {
  const calendar = step.workCalendar;
  place.phase = phase;
  place.enter(state, calendar);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  run.queue.push(run.memory.after(calendar, place.minutes), TASK, place.id);
  if ((step.flags & CAN_FAIL) !== 0) operate(run, place.equipment!, calendar, place.minutes);
  return false;
}

/** Time that passes by itself, day and night. */
export function unattended(run: Run, place: Place, phase: number, step: Step, draw: number): false {
  place.phase = phase;
  place.enter(UNATTENDED, -1);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  const minutes = run.sampler.next(draw);
  run.queue.push(run.now + minutes, TASK, place.id);
  if ((step.flags & CAN_FAIL) !== 0) operate(run, place.equipment!, -1, minutes);
  return false;
}

/** The place waits, off shift, until a time. */
export function putOff(run: Run, place: Place, phase: number, until: number, step: Step): void {
  place.phase = phase;
  place.enter(OFF_SHIFT, -1);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  run.queue.push(until, TASK, place.id);
}

/** All members of a lot show the state of the place that leads it. */
export function mirror(lead: Place): void {
  for (const place of lead.station.places) if (place !== lead && place.unit !== null) place.mirror(lead);
}
