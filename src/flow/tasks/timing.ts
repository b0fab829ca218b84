import type { Equipment, FailureMode } from '../floor/equipment.js';
import type { Place } from '../floor/place.js';
import {
  CHANGEOVER,
  IN_CHANGE_ALONE,
  IN_CHANGEOVER,
  IN_MENDING,
  IN_PROCESS,
  IN_REPAIR,
  IN_SETTLE,
  IN_WORK,
  OFF_SHIFT,
  SIDE_BY_SIDE,
  TASK,
  UNATTENDED,
  WORKING,
} from '../floor/states.js';
import type { Step } from '../floor/step.js';
import { AT_LOT } from '../floor/step-flags.js';
import type { Run } from '../run.js';

/**
 * Phases of a task that take time: the state of the place while they last, and the event at their end. What
 * is going on can be broken off (equipment fails, people leave) and taken up again with what is left of it.
 */

const STATE_OF = new Int8Array(SIDE_BY_SIDE + 1).fill(-1);
STATE_OF[IN_CHANGEOVER] = STATE_OF[IN_CHANGE_ALONE] = CHANGEOVER;
STATE_OF[IN_WORK] = STATE_OF[IN_REPAIR] = STATE_OF[IN_MENDING] = WORKING;
STATE_OF[IN_SETTLE] = STATE_OF[IN_PROCESS] = UNATTENDED;

/** People do it, in the calendar of the step; the rest passes by itself, day and night. */
export const isAttended = (phase: number): boolean =>
  phase === IN_CHANGEOVER || phase === IN_WORK || phase === IN_REPAIR || phase === IN_MENDING;

/** A phase of so many minutes begins, or goes on. */
export function enterPhase(run: Run, place: Place, step: Step, phase: number, minutes: number): false {
  const calendar = isAttended(phase) ? step.workCalendar : -1;
  if (STATE_OF[phase] === CHANGEOVER) run.changeoverLog?.goesOn(place, run.now);
  place.phase = phase;
  place.enter(STATE_OF[phase], calendar);
  mirror(place, step);
  run.queue.push(run.memory.after(calendar, minutes), TASK, place.id);
  if (place.equipment !== null) operate(run, place.equipment, calendar, minutes);
  if (place.pieces.length > 0) for (const piece of place.pieces) operate(run, piece, calendar, minutes);
  return false;
}

/** Repair work at the end of a step or, ahead of the work of a hold, on noted items; `place.minutes`. */
export function repair(run: Run, place: Place, step: Step, phase: number): false {
  run.tally.repairMinutes += place.minutes;
  countRework(step, place.minutes);
  return enterPhase(run, place, step, phase, place.minutes);
}

/** Person-minutes of work that is done again, or that mends. */
export function countRework({ asked }: Step, minutes: number): void {
  for (const { resource, amount } of asked.needs) if (resource.isCrew) resource.rework += amount * minutes;
}

/** The place waits, off shift, until a time. */
export function putOff(run: Run, place: Place, step: Step, phase: number, until: number): void {
  place.phase = phase;
  place.enter(OFF_SHIFT, -1);
  mirror(place, step);
  run.queue.push(until, TASK, place.id);
}

/** All members of a lot, if it is one, show the state of the place that leads it. */
export function mirror(lead: Place, { flags }: Step): void {
  if ((flags & AT_LOT) === 0) return;
  for (const place of lead.station.places) if (place !== lead && place.unit !== null) place.mirror(lead);
}

/**
 * Whether a task with an end in the event queue is going on at the place; a unit that is done and blocks it
 * keeps its last phase.
 */
export const isUnderWay = (place: Place): boolean =>
  place.unit !== null && !place.isSuspended && STATE_OF[place.phase] === place.state;

/**
 * Breaks off the task under way: its end is taken out of the queue, and the minutes that are left are kept.
 * The caller says which state the place is in.
 */
export function suspend(run: Run, place: Place): void {
  const end = run.queue.remove(TASK, place.id),
    calendar = isAttended(place.phase) ? place.unit!.step.workCalendar : -1;
  place.minutesLeft = end === Infinity ? Infinity : run.memory.worked(calendar, run.now, end);
  if (STATE_OF[place.phase] === CHANGEOVER) run.changeoverLog?.stops(place, run.memory, calendar);
  place.isSuspended = true;
  if (place.equipment !== null) stopOperating(run, place.equipment);
  if (place.pieces.length > 0) for (const piece of place.pieces) stopOperating(run, piece);
}

/** Takes it up again. */
export function resume(run: Run, place: Place): void {
  place.isSuspended = false;
  enterPhase(run, place, place.unit!.step, place.phase, place.minutesLeft);
}

/**
 * Operating time: the minutes in which a place is at its task (changeover, work, settle, process, repair
 * work), each in the calendar that governs it. They are charged when a task begins; what is broken off is
 * given back.
 */

/**
 * A task of so many minutes begins: the failure that comes first in it, if any, is scheduled. One that falls
 * on its end comes with the next task.
 */
function operate(run: Run, equipment: Equipment, calendar: number, minutes: number): void {
  let first: FailureMode | null = null;
  for (const mode of equipment.modes)
    if (!mode.byClock && (first === null || mode.left < first.left)) first = mode;
  if (first === null) return;
  cancel(run, equipment);
  const charged = Math.min(first.left, minutes);
  for (const mode of equipment.modes) mode.left -= charged;
  equipment.charged = charged;
  equipment.since = run.now;
  equipment.calendar = calendar;
  if (charged === minutes) return;
  equipment.next = first;
  run.disruptions.schedule(run.queue, first.source, run.memory.after(calendar, charged));
}

/** The task under way is broken off, for whatever reason. */
function stopOperating(run: Run, equipment: Equipment): void {
  cancel(run, equipment);
  if (equipment.charged === 0) return;
  const { calendar, since } = equipment,
    worked = run.memory.worked(calendar, since, run.now);
  for (const mode of equipment.modes) mode.left += Math.max(0, equipment.charged - worked);
  equipment.charged = 0;
}

function cancel(run: Run, equipment: Equipment): void {
  if (equipment.next === null) return;
  run.disruptions.unschedule(run.queue, equipment.next.source);
  equipment.next = null;
}
