import { beginBeside } from './side-by-side.js';
import { setUp } from './changeovers.js';
import { mendNoted } from './holds.js';
import { operate } from './operating-time.js';
import { learningFactor } from './work-time.js';
import type { Run } from '../run.js';
import { ask, releaseCrew, request } from '../claims/claims.js';
import {
  CHANGEOVER,
  IN_CHANGEOVER,
  IN_MENDING,
  IN_PROCESS,
  IN_REPAIR,
  IN_SETTLE,
  IN_WORK,
  OFF_SHIFT,
  TASK,
  UNATTENDED,
  WAIT_CREW,
  WAIT_END,
  WAIT_NEEDS,
  WAIT_REPAIR,
  WAIT_SHIFT,
  WORKING,
} from '../floor/states.js';
import type { Place } from '../floor/place.js';
import {
  AT_LOT,
  ATTENDED_END,
  CAN_FAIL,
  HAS_CHANGEOVER,
  HAS_FACTOR,
  HAS_NEEDS,
  HAS_PASSES,
  HAS_PROCESS,
  HOLDS,
  IS_GROUP,
  LEARNS,
  ONE_SHIFT,
} from '../floor/step-flags.js';
import type { Step } from '../floor/step.js';
import { resume } from './suspend.js';
import type { Unit } from '../floor/unit.js';

/**
 * What goes on at a place, rules 3 and 4: needs, changeover, passes of work and settle, process, repair. The
 * crew is held from the start to the end of the last work (settling between passes included, a wait for a
 * shift with time enough left out), and through a repair that follows at once; the last settle and the
 * process are unattended.
 */

/** The unit at `place` begins its step. */
export function beginStep(run: Run, place: Place): void {
  const { step } = place.unit!;
  step.visits++;
  if ((step.flags & LEARNS) !== 0) place.attempt = ++step.begun;
  if ((step.flags & HAS_NEEDS) !== 0) {
    place.phase = WAIT_NEEDS;
    if (!request(run, place)) {
      if ((step.flags & AT_LOT) !== 0) mirror(place);
      return;
    }
  }
  start(run, place, step);
}

/** The needs of the step, or of a repair, are met. */
export function startTask(run: Run, place: Place): void {
  if (place.isSuspended) takeUp(run, place);
  else if (place.phase === WAIT_REPAIR) startRepair(run, place);
  else if (place.phase === WAIT_CREW) goOnWorking(run, place, place.unit!.step);
  else start(run, place, place.unit!.step);
}

/** What was broken off goes on; its crew is there. A place that is down takes it up later. */
export function takeUp(run: Run, place: Place): void {
  if (place.isDown) {
    place.isBroken = true;
    return;
  }
  resume(run, place);
  if ((place.unit!.step.flags & AT_LOT) !== 0) mirror(place);
}

/**
 * The phase that was going on at `place` is over. True: the step is done, but for what `complete` sees to.
 */
export function nextPhase(run: Run, place: Place): boolean {
  const { step } = place.unit!;
  switch (place.phase) {
    case IN_WORK: {
      if ((step.flags & (HAS_PASSES | HAS_PROCESS)) === 0) return true;
      const last = ++place.pass >= step.passes;
      if (step.settleDraw < 0) return last ? afterWork(run, place, step) : startWork(run, place, step);
      if (last) releaseCrew(run, place);
      return unattended(run, place, IN_SETTLE, step, step.settleDraw);
    }
    case IN_SETTLE:
      return place.pass >= step.passes ? afterWork(run, place, step) : startWork(run, place, step);
    case IN_CHANGEOVER:
      place.pass = 0;
      if (run.changeoverLog !== null) run.changeoverLog.changed(place, run.now);
      return beginWork(run, place, step);
    case IN_MENDING:
      return startWork(run, place, step);
    case WAIT_SHIFT:
      return goOnWorking(run, place, step);
    case IN_PROCESS:
      return (step.flags & ATTENDED_END) === 0 || !waitForSomebody(run, place, step);
    default:
      return true;
  }
}

/**
 * Repair work found at the end of the step, `place.minutes`: at once if the crew is still there, otherwise it
 * is asked for again.
 */
export function beginRepair(run: Run, place: Place): void {
  if (lacksCrew(place, place.unit!.step)) {
    place.phase = WAIT_REPAIR;
    if (!request(run, place)) return;
  }
  startRepair(run, place);
}

function start(run: Run, place: Place, step: Step): void {
  if ((step.flags & HAS_CHANGEOVER) !== 0 && startChangeover(run, place, step)) return;
  place.pass = 0;
  // Nothing to do here: the step ends at once, as an event of its own.
  if (beginWork(run, place, step)) run.queue.push(run.now, TASK, place.id);
}

/** At a hold noted items are mended first. True if there is nothing more to do in this step. */
function beginWork(run: Run, place: Place, step: Step): boolean {
  if ((step.flags & HOLDS) !== 0) {
    place.minutes = mendNoted(run, place.unit!, step);
    if (place.minutes > 0) {
      repair(run, place, step, IN_MENDING);
      return false;
    }
  }
  return startWork(run, place, step);
}

function startRepair(run: Run, place: Place): void {
  repair(run, place, place.unit!.step, IN_REPAIR);
}

function repair(run: Run, place: Place, step: Step, phase: number): void {
  run.tally.repairMinutes += place.minutes;
  countRework(step, place.minutes);
  attended(run, place, phase, WORKING, step);
}

/** Person-minutes of work that is done again, or that mends. */
function countRework({ needs }: Step, minutes: number): void {
  for (const { resource, amount } of needs) if (resource.isCrew) resource.rework += amount * minutes;
}

/** Work of the present pass; true if there is nothing more to do in this step. */
function startWork(run: Run, place: Place, step: Step): boolean {
  if (step.workDraw < 0)
    return (step.flags & IS_GROUP) !== 0 && beginBeside(run, place) ? false : afterWork(run, place, step);
  place.minutes = run.sampler.next(step.workDraw);
  if ((step.flags & (HAS_FACTOR | LEARNS)) !== 0) {
    place.minutes *= factor(run, place.unit!, step);
    if ((step.flags & LEARNS) !== 0)
      place.minutes *= learningFactor(
        run.model.steps,
        step.id,
        run.model.steps.learnBefore[step.id] + place.attempt,
      );
  }
  if ((step.flags & HAS_NEEDS) !== 0 && place.unit!.againTo >= step.id) countRework(step, place.minutes);
  return goOnWorking(run, place, step);
}

/**
 * Work of `place.minutes`, once the crew is there and, where it has to end in one shift, there is time
 * enough.
 */
function goOnWorking(run: Run, place: Place, step: Step): false {
  if (lacksCrew(place, step)) {
    place.phase = WAIT_CREW;
    if (!ask(run, place)) {
      if ((step.flags & AT_LOT) !== 0) mirror(place);
      return false;
    }
  }
  if ((step.flags & ONE_SHIFT) !== 0 && waitForShift(run, place, step)) return false;
  return attended(run, place, IN_WORK, WORKING, step);
}

/**
 * Whether the step needs people who are not there: they left between passes, or while the work waited for a
 * shift.
 */
export function lacksCrew(place: Place, { flags, needs }: Step): boolean {
  return (flags & HAS_NEEDS) !== 0 && !place.holdsCrew && needs.length > 0 && needs[0].resource.isCrew;
}

/**
 * The crew is set free and the work put off to the first shift in which it can end; false if it can begin
 * now.
 */
function waitForShift(run: Run, place: Place, step: Step): boolean {
  const begin = run.memory.calendars[step.workCalendar].startInOneShift(run.now, place.minutes);
  if (begin <= run.now) return false;
  releaseCrew(run, place);
  putOff(run, place, WAIT_SHIFT, begin, step);
  return true;
}

/** A process that somebody has to end waits for the first working minute; false if there is somebody. */
function waitForSomebody(run: Run, place: Place, step: Step): boolean {
  const end = run.memory.calendars[step.workCalendar].nextAttended(run.now);
  if (end <= run.now) return false;
  putOff(run, place, WAIT_END, end, step);
  return true;
}

/** The place waits, off shift, until a time. */
function putOff(run: Run, place: Place, phase: number, until: number, step: Step): void {
  place.phase = phase;
  place.enter(OFF_SHIFT, -1);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  run.queue.push(until, TASK, place.id);
}

/** All work of the step is done: the process, if any; true if there is none. */
function afterWork(run: Run, place: Place, step: Step): boolean {
  if (step.processDraw < 0) {
    place.phase = IN_PROCESS;
    return true;
  }
  releaseCrew(run, place);
  return unattended(run, place, IN_PROCESS, step, step.processDraw);
}

function startChangeover(run: Run, place: Place, step: Step): boolean {
  const minutes = setUp(run, place);
  if (minutes < 0) return false;
  place.minutes = minutes;
  attended(run, place, IN_CHANGEOVER, CHANGEOVER, step);
  return true;
}

/** Work of `place.minutes` by people, in the calendar of the step. */
function attended(run: Run, place: Place, phase: number, state: number, step: Step): false {
  const calendar = step.workCalendar;
  place.phase = phase;
  place.enter(state, calendar);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  run.queue.push(run.memory.after(calendar, place.minutes), TASK, place.id);
  if ((step.flags & CAN_FAIL) !== 0) operate(run, place.equipment!, calendar, place.minutes);
  return false;
}

/** Time that passes by itself, day and night. */
function unattended(run: Run, place: Place, phase: number, step: Step, draw: number): false {
  place.phase = phase;
  place.enter(UNATTENDED, -1);
  if ((step.flags & AT_LOT) !== 0) mirror(place);
  const minutes = run.sampler.next(draw);
  run.queue.push(run.now + minutes, TASK, place.id);
  if ((step.flags & CAN_FAIL) !== 0) operate(run, place.equipment!, -1, minutes);
  return false;
}

/** All members of a lot show the state of the place that leads it. */
export function mirror(lead: Place): void {
  for (const place of lead.station.places) if (place !== lead && place.unit !== null) place.mirror(lead);
}

function factor(run: Run, unit: Unit, step: Step): number {
  const { factorStart, factorOption, factorOffset, factorTable } = run.model.steps;
  let product = 1;
  for (let f = factorStart[step.id]; f < factorStart[step.id + 1]; f++)
    product *= factorTable[factorOffset[f] + unit.options[factorOption[f]]];
  return product;
}
