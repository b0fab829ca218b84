import { lacksCrew, releaseCrew, request, requestAgain } from '../claims/claims.js';
import { isSetAside } from '../claims/kits.js';
import type { Place } from '../floor/place.js';
import {
  IN_CHANGE_ALONE,
  IN_CHANGEOVER,
  IN_MENDING,
  IN_PROCESS,
  IN_REPAIR,
  IN_SETTLE,
  IN_WORK,
  TASK,
  WAIT_CREW,
  WAIT_END,
  WAIT_NEEDS,
  WAIT_REPAIR,
  WAIT_REST,
  WAIT_SHIFT,
} from '../floor/states.js';
import type { Step } from '../floor/step.js';
import {
  ATTENDED_END,
  CHANGES_ALONE,
  HAS_CHANGEOVER,
  HAS_NEEDS,
  HAS_PARTS,
  HAS_PASSES,
  HAS_PROCESS,
  HOLDS,
  IS_GROUP,
  LEARNS,
  ONE_CREW,
  ONE_SHIFT,
} from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { startChangeover } from './changeovers.js';
import { mendNoted } from './holds.js';
import { beginWithCrew } from './one-crew.js';
import { processMinutes, workMinutes } from './options.js';
import { beginParts, endStretch, nextStretch } from './parts.js';
import { beginSideBySide } from './side-by-side.js';
import { countRework, enterPhase, mirror, putOff, repair, resume } from './timing.js';

/**
 * What goes on at a place, rules 3 and 4: a changeover that passes by itself, needs, a changeover by people,
 * passes of work and settle, process, repair. Crew and equipment are held from the needs to the end of the
 * last work, settling between passes included, and in a repair that follows at once.
 */

/** The unit at `place` begins its step. */
export function beginStep(run: Run, place: Place, unit: Unit, step: Step): void {
  step.visits++;
  if ((step.flags & LEARNS) !== 0) place.attempt = ++step.begun;
  if ((step.flags & CHANGES_ALONE) === 0 || !startChangeover(run, place, step)) claim(run, place, unit, step);
}

function claim(run: Run, place: Place, unit: Unit, step: Step): void {
  if ((step.flags & ONE_CREW) !== 0 && beginWithCrew(run, place, unit, step)) return;
  if ((step.flags & HAS_NEEDS) !== 0) {
    place.phase = isSetAside(unit, step) ? WAIT_REST : WAIT_NEEDS;
    place.wanted = step.firstParts;
    if (!request(run, place)) {
      mirror(place, step);
      return;
    }
  }
  start(run, place, unit, step);
}

/** The needs of the step, or of a repair, are met. */
export function startTask(run: Run, place: Place): void {
  const unit = place.unit!,
    { step } = unit;
  if (place.isSuspended) takeUp(run, place);
  else if (place.phase === WAIT_REPAIR) repair(run, place, step, IN_REPAIR);
  else if (place.phase === WAIT_CREW) goOnWorking(run, place, step);
  else start(run, place, unit, step);
}

/** What was broken off goes on; its crew is there. A place that is down takes it up later. */
export function takeUp(run: Run, place: Place): void {
  if (place.isDown) {
    place.isBroken = true;
    return;
  }
  resume(run, place);
}

/**
 * Repair work found at the end of the step, `place.minutes`: at once if the crew is still there, otherwise it
 * is asked for again.
 */
export function beginRepair(run: Run, place: Place, step: Step): void {
  if (lacksCrew(place, step)) {
    place.phase = WAIT_REPAIR;
    if (!request(run, place)) return;
  }
  repair(run, place, step, IN_REPAIR);
}

/** The phase going on at `place` is over. True: the step is done, but for what `complete` sees to. */
export function nextPhase(run: Run, place: Place, unit: Unit, step: Step): boolean {
  switch (place.phase) {
    case IN_WORK: {
      if ((step.flags & HAS_PARTS) !== 0 && !endStretch(run, place, step))
        return goOnWorking(run, place, step);
      if ((step.flags & (HAS_PASSES | HAS_PROCESS)) === 0) return true;
      const last = ++place.pass >= step.passes;
      if (step.settleDraw < 0) return last ? afterWork(run, place, step) : startWork(run, place, unit, step);
      if (last) releaseCrew(run, place);
      return enterPhase(run, place, step, IN_SETTLE, run.sampler.next(step.settleDraw));
    }
    case IN_SETTLE:
      return place.pass >= step.passes ? afterWork(run, place, step) : startWork(run, place, unit, step);
    case IN_CHANGEOVER:
      place.pass = 0;
      run.changeoverLog?.changed(place, run.memory, step.workCalendar);
      return beginWork(run, place, unit, step);
    case IN_CHANGE_ALONE:
      run.changeoverLog?.changed(place, run.memory, -1);
      claim(run, place, unit, step);
      return false;
    case IN_MENDING:
      return startWork(run, place, unit, step);
    case WAIT_SHIFT:
      return goOnWorking(run, place, step);
    case IN_PROCESS:
      return (step.flags & ATTENDED_END) === 0 || !waitForSomebody(run, place, step);
    default:
      return true;
  }
}

function start(run: Run, place: Place, unit: Unit, step: Step): void {
  if ((step.flags & HAS_CHANGEOVER) !== 0 && startChangeover(run, place, step)) return;
  place.pass = 0;
  // Nothing to do here: the step ends at once, as an event of its own.
  if (beginWork(run, place, unit, step)) run.queue.push(run.now, TASK, place.id);
}

/** At a hold noted items are mended first. True if there is nothing more to do in this step. */
function beginWork(run: Run, place: Place, unit: Unit, step: Step): boolean {
  if ((step.flags & HOLDS) !== 0) {
    place.minutes = mendNoted(run, unit, step);
    if (place.minutes > 0) return repair(run, place, step, IN_MENDING);
  }
  return startWork(run, place, unit, step);
}

/** Work of the present pass; true if there is nothing more to do in this step. */
function startWork(run: Run, place: Place, unit: Unit, step: Step): boolean {
  if (step.workDraw < 0)
    return (step.flags & IS_GROUP) !== 0 && beginSideBySide(run, place) ? false : afterWork(run, place, step);
  place.minutes = workMinutes(run, place, unit, step);
  if ((step.flags & HAS_NEEDS) !== 0 && unit.againTo >= step.id) countRework(step, place.minutes);
  if ((step.flags & HAS_PARTS) !== 0) beginParts(run, place, step);
  return goOnWorking(run, place, step);
}

/** Work of `place.minutes`, once all it needs is there and, if it has to end in one shift, there is time. */
function goOnWorking(run: Run, place: Place, step: Step): false {
  while (lacksCrew(place, step) || ((step.flags & HAS_PARTS) !== 0 && !nextStretch(run, place, step))) {
    place.phase = WAIT_CREW;
    if (!requestAgain(run, place)) {
      mirror(place, step);
      return false;
    }
  }
  if ((step.flags & ONE_SHIFT) !== 0 && waitForShift(run, place, step)) return false;
  return enterPhase(run, place, step, IN_WORK, place.minutes);
}

/** The crew is set free and the work put off to the first shift in which it can end; false: it can begin. */
function waitForShift(run: Run, place: Place, step: Step): boolean {
  const begin = run.memory.calendars[step.workCalendar].startInOneShift(run.now, place.minutes);
  if (begin <= run.now) return false;
  releaseCrew(run, place);
  putOff(run, place, step, WAIT_SHIFT, begin);
  return true;
}

/** A process that somebody has to end waits for the first working minute; false if there is somebody. */
function waitForSomebody(run: Run, place: Place, step: Step): boolean {
  const end = run.memory.calendars[step.workCalendar].nextAttended(run.now);
  if (end <= run.now) return false;
  putOff(run, place, step, WAIT_END, end);
  return true;
}

/** All work of the step is done: the process, if any; true if there is none. */
function afterWork(run: Run, place: Place, step: Step): boolean {
  if (step.processDraw < 0) {
    place.phase = IN_PROCESS;
    return true;
  }
  releaseCrew(run, place);
  place.wanted = 0;
  return enterPhase(run, place, step, IN_PROCESS, processMinutes(run, place.unit!, step));
}
