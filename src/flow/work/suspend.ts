import type { Place } from '../floor/place.js';
import {
  CHANGEOVER,
  IN_CHANGEOVER,
  IN_MENDING,
  IN_PROCESS,
  IN_REPAIR,
  IN_SETTLE,
  IN_WORK,
  TASK,
  UNATTENDED,
  WORKING,
} from '../floor/states.js';
import type { Run } from '../run.js';
import { operate, stopOperating } from './operating-time.js';

/**
 * What is going on at a place can be broken off (equipment fails, people leave) and taken up again with what
 * is left of it.
 */

const STATE_OF = new Map([
  [IN_CHANGEOVER, CHANGEOVER],
  [IN_WORK, WORKING],
  [IN_REPAIR, WORKING],
  [IN_MENDING, WORKING],
  [IN_SETTLE, UNATTENDED],
  [IN_PROCESS, UNATTENDED],
]);

/**
 * Whether a task with an end in the event queue is going on at the place; a unit that is done and blocks it
 * keeps its last phase.
 */
export const isUnderWay = (place: Place): boolean =>
  place.unit !== null && !place.isSuspended && STATE_OF.get(place.phase) === place.state;

/** People do it, in the calendar of the step. */
export const isAttended = (phase: number): boolean =>
  phase === IN_CHANGEOVER || phase === IN_WORK || phase === IN_REPAIR || phase === IN_MENDING;

/**
 * Breaks off the task under way: its end is taken out of the queue, and the minutes that are left are kept.
 * The caller says which state the place is in.
 */
export function suspend(run: Run, place: Place): void {
  const { memory } = run,
    end = run.queue.remove(TASK, place.id),
    calendar = isAttended(place.phase) ? place.unit!.step.workCalendar : -1;
  place.minutesLeft = end === Infinity ? Infinity : memory.worked(calendar, memory.now, end);
  place.isSuspended = true;
  if (place.equipment !== null) stopOperating(run, place.equipment);
}

/** Takes it up again. */
export function resume(run: Run, place: Place): void {
  const calendar = isAttended(place.phase) ? place.unit!.step.workCalendar : -1;
  place.isSuspended = false;
  place.enter(STATE_OF.get(place.phase)!, calendar);
  run.queue.push(run.memory.after(calendar, place.minutesLeft), TASK, place.id);
  if (place.equipment !== null) operate(run, place.equipment, calendar, place.minutesLeft);
}
